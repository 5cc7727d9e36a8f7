/** Highest voltages between conductors, V, of extra-low and of low voltage. Source: BS 7671 and IEC 61140. */
export const bandsBetweenConductors = {
  ac: { extraLow: 50, low: 1000 },
  dc: { extraLow: 120, low: 1500 },
} as const;

/** Highest voltage between a conductor and earth, V, of low voltage. Source: BS 7671, definitions. */
export const lowToEarth = { ac: 600, dc: 900 } as const;

/** Highest SELV, V, with which live parts may be bare in dry conditions. Source: BS 7671, regulation 414.4.5. */
export const bareWhenDry = { ac: 25, dc: 60 } as const;
