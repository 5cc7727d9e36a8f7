/** Colours of blade fuses by their rating in A. Source: three general articles (3 A, 7.5 A, 10 A, 15 A, 30 A); the rest from memory. */
export const bladeColours: readonly { readonly rating: number; readonly colour: string }[] = [
  { rating: 1, colour: 'black' },
  { rating: 2, colour: 'grey' },
  { rating: 3, colour: 'violet' },
  { rating: 4, colour: 'pink' },
  { rating: 5, colour: 'tan' },
  { rating: 7.5, colour: 'brown' },
  { rating: 10, colour: 'red' },
  { rating: 15, colour: 'blue' },
  { rating: 20, colour: 'yellow' },
  { rating: 25, colour: 'natural (clear)' },
  { rating: 30, colour: 'green' },
  { rating: 35, colour: 'blue-green' },
  { rating: 40, colour: 'orange' },
];

/** Ratings that are made, A. */
export const bladeRatings: readonly number[] = bladeColours.map(({ rating }) => rating);

/**
 * How long a blade fuse (type C) takes to open, s, by its load in % of the rating; null where no time is set or the limit differs by type,
 * as the shortest time at 350 % does (0.04 s or 0.08 s). Source: ISO 8820-3, from memory.
 */
export const bladeTimes: readonly { readonly percent: number; readonly least: number | null; readonly most: number | null }[] = [
  { percent: 110, least: 360_000, most: null },
  { percent: 135, least: 0.75, most: 600 },
  { percent: 200, least: 0.15, most: 5 },
  { percent: 350, least: null, most: 0.5 },
  { percent: 600, least: null, most: 0.1 },
];
