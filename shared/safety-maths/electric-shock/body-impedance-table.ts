/** Impedance of a body in Ω that 5 %, 50 % and 95 % of people do not exceed, up to a touch voltage in V (Infinity: for any above). */
interface BodyImpedance {
  readonly upTo: number;
  readonly ohms: readonly [number, number, number];
}

/**
 * Hand to hand, dry, large contact area, 50 Hz or 60 Hz. 1994: IEC 479-1, table 1; its row of 700 V is from memory. 2005: IEC/TS 60479-1,
 * table 1, all from memory. The last row of each is the value that higher voltages tend to.
 */
export const bodyImpedances: Readonly<Record<'1994' | '2005', readonly BodyImpedance[]>> = {
  '1994': [
    { upTo: 25, ohms: [1750, 3250, 6100] },
    { upTo: 50, ohms: [1450, 2625, 4375] },
    { upTo: 75, ohms: [1250, 2200, 3500] },
    { upTo: 100, ohms: [1200, 1875, 3200] },
    { upTo: 125, ohms: [1125, 1625, 2875] },
    { upTo: 220, ohms: [1000, 1350, 2125] },
    { upTo: 700, ohms: [750, 1100, 1550] },
    { upTo: 1000, ohms: [700, 1050, 1500] },
    { upTo: Infinity, ohms: [650, 750, 850] },
  ],
  '2005': [
    { upTo: 25, ohms: [1750, 3250, 6100] },
    { upTo: 50, ohms: [1375, 2500, 4600] },
    { upTo: 75, ohms: [1125, 2000, 3600] },
    { upTo: 100, ohms: [990, 1725, 3125] },
    { upTo: 125, ohms: [900, 1550, 2675] },
    { upTo: 150, ohms: [850, 1400, 2350] },
    { upTo: 175, ohms: [825, 1325, 2175] },
    { upTo: 200, ohms: [800, 1275, 2050] },
    { upTo: 225, ohms: [775, 1225, 1900] },
    { upTo: 400, ohms: [700, 950, 1275] },
    { upTo: 500, ohms: [625, 850, 1150] },
    { upTo: 700, ohms: [575, 775, 1050] },
    { upTo: 1000, ohms: [575, 775, 1050] },
    { upTo: Infinity, ohms: [575, 775, 1050] },
  ],
};
