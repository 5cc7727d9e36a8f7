/** Longest times in s to cut off a fault to earth, by how the supply is earthed. */
interface Times {
  readonly TN: number;
  readonly TT: number;
}

/** At or below this voltage to earth, V, the table sets no time. */
export const noTimeUpTo = 50;

/** Final circuits on alternating current, by the voltage to earth in V, each row up to its own. Source: BS 7671, table 41.1. */
export const finalCircuits: readonly (Times & { readonly upTo: number })[] = [
  { upTo: 120, TN: 0.8, TT: 0.3 },
  { upTo: 230, TN: 0.4, TT: 0.2 },
  { upTo: 400, TN: 0.2, TT: 0.07 },
  { upTo: Infinity, TN: 0.1, TT: 0.04 },
];

/** Distribution circuits, which feed other boards. Source: BS 7671, regulations 411.3.2.3 and 411.3.2.4. */
export const distributionCircuits: Times = { TN: 5, TT: 1 };
