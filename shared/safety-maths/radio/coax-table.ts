/** Typical losses of a cable in dB per 100 ft at the two frequencies of the table. */
export interface Coax {
  readonly at30: number;
  readonly at150: number;
}

/** Source: corrected table 6-1 of a licence manual (see `coaxLoss`); cables are called by their type, whoever makes them. */
export const coaxes = {
  'RG-8': { at30: 1.08, at150: 2.53 },
  'RG-8X': { at30: 1.96, at150: 4.53 },
  'RG-58': { at30: 2.47, at150: 5.63 },
  'RG-59': { at30: 1.79, at150: 4.11 },
  'RG-174': { at30: 4.56, at150: 10.3 },
  'RG-213': { at30: 1.08, at150: 2.53 },
} as const satisfies Record<string, Coax>;

/** The two constants of a = k₁ √f + k₂ f (MHz, dB per 100 ft) that give the two figures of the table. */
export function curveOf({ at30, at150 }: Coax): { metal: number; insulation: number } {
  const [low, high] = [Math.sqrt(30), Math.sqrt(150)];
  const metal = (at150 - 5 * at30) / (high - 5 * low);
  return { metal, insulation: (at30 - metal * low) / 30 };
}
