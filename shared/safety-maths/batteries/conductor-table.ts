/**
 * Plain copper conductors: area in mm², greatest resistance at 20 °C in Ω/km, stranded (class 2) and flexible (class 5).
 * Source: IEC 60228, tables 1 to 3, in cable makers' copies.
 */
export interface Conductor {
  readonly area: number;
  readonly class2: number;
  readonly class5: number;
}

/** From thin to thick. */
export const conductors: readonly Conductor[] = [
  { area: 0.5, class2: 36, class5: 39 },
  { area: 0.75, class2: 24.5, class5: 26 },
  { area: 1, class2: 18.1, class5: 19.5 },
  { area: 1.5, class2: 12.1, class5: 13.3 },
  { area: 2.5, class2: 7.41, class5: 7.98 },
  { area: 4, class2: 4.61, class5: 4.95 },
  { area: 6, class2: 3.08, class5: 3.3 },
  { area: 10, class2: 1.83, class5: 1.91 },
  { area: 16, class2: 1.15, class5: 1.21 },
  { area: 25, class2: 0.727, class5: 0.78 },
  { area: 35, class2: 0.524, class5: 0.554 },
  { area: 50, class2: 0.387, class5: 0.386 },
  { area: 70, class2: 0.268, class5: 0.272 },
  { area: 95, class2: 0.193, class5: 0.206 },
  { area: 120, class2: 0.153, class5: 0.161 },
];
