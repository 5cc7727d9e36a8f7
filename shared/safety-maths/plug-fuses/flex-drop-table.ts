/**
 * Volts lost in a flex: area of a conductor in mm², loss in mV for each ampere and each metre of its length, out and back counted.
 * Source: BS 7671, table 4F3B, conductor at 60 °C, in a cable distributor's copy.
 */
export const flexDrops: readonly { readonly area: number; readonly drop: number }[] = [
  { area: 0.5, drop: 93 },
  { area: 0.75, drop: 62 },
  { area: 1, drop: 46 },
  { area: 1.25, drop: 37 },
  { area: 1.5, drop: 32 },
  { area: 2.5, drop: 19 },
  { area: 4, drop: 12 },
];
