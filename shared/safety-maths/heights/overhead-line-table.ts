/** Great Britain's distances and heights of overhead lines, by what the line's owner calls it. All in m. */

/** Nearer than this to a line on that kind of support, ask the network operator first. Source: GS6, as others restate it. */
export const consultWithin = { 'steel tower': 15, 'wood pole': 9 } as const;

/** Nothing may come nearer to a wire than this. Source: GS6, 4th edition, from memory. */
export const exclusion = { 'up to 1 kV': 1, '11 or 33 kV': 3, '132 kV': 6, '275 or 400 kV': 7 } as const;

/** The least height above ground, hot and sagging. Source: Electricity Safety, Quality and Continuity Regulations 2002, schedule 2. */
export const leastHeight = {
  'up to 33 kV': 5.2,
  'up to 33 kV over a road': 5.8,
  '66 kV': 6,
  '132 kV': 6.7,
  '275 kV': 7,
  '400 kV': 7.3,
} as const;
