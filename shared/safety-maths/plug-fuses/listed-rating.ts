/** The smallest rating of a list that is not below a current; null if there is none. Current and ratings in the same unit. */
export const smallestNotBelow = (current: number, ratings: readonly number[]): number | null =>
  ratings.reduce<number | null>((best, rating) => (rating >= current && (best === null || rating < best) ? rating : best), null);
