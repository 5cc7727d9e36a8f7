import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** The power in a resistance across a voltage, such as a bleed resistor: P = V² / R. Voltage in V (r.m.s. or d.c.), resistance in Ω; power in W. Source: SI Brochure. */
export const powerFromVoltageAndResistance = calculation({
  id: 'power-from-voltage-and-resistance',
  title: 'Power from voltage and resistance',
  topic: 'electrical-basics',
  formula: 'P = V² / R',
  inputs: {
    voltage: quantity('voltage across it', 'V', { min: 0, max: 1e6 }),
    resistance: quantity('resistance', 'ohm', { min: 1e-6, max: 1e12 }),
  },
  outputs: { power: 'W' },
  sources: ['si'],
  validity:
    'A fixed resistance on direct current or on r.m.s. alternating current; a filament or element has less resistance when cold and takes more at first.',
  foundBy: ['bleed resistor', 'heater watts', 'volts squared'],
  caution: 'hv',
  checks: ['power from voltage and resistance', 'initial power in a bleed resistor', 'continuous power in a bleed resistor'],
  work({ voltage, resistance }) {
    const power = (voltage * voltage) / resistance;
    return {
      result: { power },
      steps: [
        'Power is the voltage squared over the resistance: P = V² / R.',
        `P = (${put(voltage, 'V')})² / ${put(resistance, 'ohm')}`,
        `P = ${out(power, 'W')}`,
      ],
    };
  },
});
