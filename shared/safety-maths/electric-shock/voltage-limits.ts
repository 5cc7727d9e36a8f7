import { calculation } from '../calculation.js';
import { choice, optional } from '../inputs.js';
import { put } from '../working.js';
import { bandsBetweenConductors, bareWhenDry, lowToEarth } from './voltage-table.js';

const { ac, dc } = bandsBetweenConductors;

/**
 * Voltage limits of the wiring rules in V, alternating (r.m.s.) and direct: of SELV, of SELV whose live parts may be bare in dry
 * conditions, and of low voltage between a conductor and earth. Source: BS 7671, IEC 60364-4-41, IEC 61140.
 */
export const voltageLimits = calculation({
  id: 'voltage-limits',
  title: 'Voltage limits of SELV and low voltage',
  topic: 'electric-shock',
  formula: 'limits of BS 7671',
  inputs: { rules: optional(choice('rules', ['BS 7671'])) },
  outputs: { selv_ac: 'V', selv_dc: 'V', bare_ac: 'V', bare_dc: 'V', low_to_earth_ac: 'V', low_to_earth_dc: 'V' },
  sources: ['voltageBands'],
  validity: 'Ordinary dry places; bathrooms, pools and other special places have lower limits, and a wet body lower ones still.',
  regionDependence: 'British and IEC limits; North American codes draw the lines elsewhere',
  caution: 'mains',
  checks: [
    { name: 'SELV limit', keys: { ac_V: 'selv_ac', dc_V: 'selv_dc' } },
    { name: 'SELV below which live parts may be bare in dry conditions', keys: { ac_V: 'bare_ac', dc_V: 'bare_dc' } },
    { name: 'low-voltage limit between a conductor and earth', keys: { ac_V: 'low_to_earth_ac', dc_V: 'low_to_earth_dc' } },
  ],
  work() {
    return {
      result: {
        selv_ac: ac.extraLow,
        selv_dc: dc.extraLow,
        bare_ac: bareWhenDry.ac,
        bare_dc: bareWhenDry.dc,
        low_to_earth_ac: lowToEarth.ac,
        low_to_earth_dc: lowToEarth.dc,
      },
      steps: [
        `SELV, kept apart from the mains and from earth: up to ${put(ac.extraLow, 'V')} a.c. or ${put(dc.extraLow, 'V')} d.c.`,
        `Live parts of SELV may be bare in dry conditions only up to ${put(bareWhenDry.ac, 'V')} a.c. or ${put(bareWhenDry.dc, 'V')} d.c.`,
        `Low voltage between a conductor and earth: up to ${put(lowToEarth.ac, 'V')} a.c. or ${put(lowToEarth.dc, 'V')} d.c.`,
        'A limit in the rules is not a safe voltage to touch.',
      ],
    };
  },
});
