import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** The heat in a poor connection, or in any resistance that carries a current: P = I² × R. Current in A, resistance in Ω; power in W. Source: SI Brochure. */
export const heatInAConnection = calculation({
  id: 'heat-in-a-connection',
  title: 'Heat in a poor connection',
  topic: 'electrical-basics',
  formula: 'P = I² × R',
  inputs: {
    current: quantity('current', 'A', { min: 0, max: 1e5 }),
    resistance: quantity('resistance of the connection', 'ohm', { min: 0, max: 1e9 }),
  },
  outputs: { power: 'W' },
  sources: ['si'],
  validity: 'Any steady current through a fixed resistance; a poor joint grows worse as it heats, so its real heat soon exceeds this.',
  foundBy: ['loose connector', 'hot plug', 'warm joint', 'dirty contact'],
  caution: 'battery',
  checks: ['power from current and resistance'],
  work({ current, resistance }) {
    const power = current * current * resistance;
    return {
      result: { power },
      steps: [
        'Heat is the current squared times the resistance: P = I² × R.',
        `P = (${put(current, 'A')})² × ${put(resistance, 'ohm')}`,
        `P = ${out(power, 'W')}. Twice the current makes four times the heat.`,
      ],
    };
  },
});
