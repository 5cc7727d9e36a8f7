/** Figures of many together are told from five people on: those of fewer would tell of somebody. */
export const fewestPeople = 5;

/** Whether a count of people is too few to be told, though it is not nobody. */
export const isTooFew = (people: number): boolean => people > 0 && people < fewestPeople;
