import { calculation } from '../calculation.js';
import { choice } from '../inputs.js';
import { out, put } from '../working.js';

/** Last temperature at which all is solid and first at which all is liquid, °C. Source: maker's and alloy data. */
const alloys = {
  'tin-lead 63/37': { solidus: 183, liquidus: 183 },
  'tin-lead 60/40': { solidus: 183, liquidus: 190 },
  'lead-free SAC305': { solidus: 217, liquidus: 220 },
} as const;
/** Usual temperatures of a tip, °C (650 °F to 750 °F). */
const tip = { min: 343, max: 398 } as const;

/**
 * At which temperature a solder melts, and how hot the tip usually is. All in °C; how far the coolest usual tip is above the melt, in K.
 * Source: soldering training column (63/37 and tip); alloy data (60/40, SAC305).
 */
export const solderTemperatures = calculation({
  id: 'solder-temperatures',
  title: 'Melting point of solder and heat of the tip',
  topic: 'workshop',
  formula: 'ΔT = T_tip − T_liquid',
  inputs: { alloy: choice('solder', Object.keys(alloys) as (keyof typeof alloys)[]) },
  outputs: { solidus: '°C', liquidus: '°C', tip_min: '°C', tip_max: '°C', above_melt: 'K' },
  sources: ['solderTip', 'solder6040', 'solderSac305'],
  validity:
    'Electronic solder with its own flux, and the usual iron by hand; follow the solder maker’s and the iron maker’s own figures first.',
  foundBy: ['soldering iron temperature', 'lead-free solder', 'how hot is an iron', 'solder will not melt'],
  caution: 'solder',
  checks: [
    { name: 'melting point of 63/37 tin-lead solder', inputs: { alloy: 'tin-lead 63/37' }, keys: { temperature_C: 'liquidus' } },
    { name: 'melting range of SAC305 lead-free solder', inputs: { alloy: 'lead-free SAC305' } },
    { name: 'usual soldering-iron tip temperature', inputs: { alloy: 'tin-lead 63/37' }, keys: { min_C: 'tip_min', max_C: 'tip_max' } },
  ],
  work({ alloy }) {
    const { solidus, liquidus } = alloys[alloy];
    const above = tip.min - liquidus;
    return {
      result: { solidus, liquidus, tip_min: tip.min, tip_max: tip.max, above_melt: above },
      steps: [
        solidus === liquidus
          ? `${alloy}: melts at ${put(liquidus, '°C')}, all at once.`
          : `${alloy}: solid up to ${put(solidus, '°C')}, liquid from ${put(liquidus, '°C')}; pasty in between: keep the joint still.`,
        `A tip is usually at ${put(tip.min, '°C')} to ${put(tip.max, '°C')}.`,
        `Above the melt: ΔT = T_tip − T_liquid = ${put(tip.min, '°C')} − ${put(liquidus, '°C')} = ${out(above, 'K')}`,
        'Such a tip burns skin the moment it touches. Let it cool in its stand, and never shake solder off.',
      ],
    };
  },
});
