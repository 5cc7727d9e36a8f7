import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

/** The energy a load uses: E = P × t. Power in W, time in h; energy in Wh, 1 Wh being 3600 J. Source: SI Brochure. */
export const energyFromPowerAndTime = calculation({
  id: 'energy-from-power-and-time',
  title: 'Energy from power and time',
  topic: 'electrical-basics',
  formula: 'E = P × t',
  inputs: {
    power: quantity('power', 'W', { min: 0, max: 1e9 }),
    time: quantity('time', 'h', { min: 0, max: 1e5 }),
  },
  outputs: { energy: 'Wh' },
  sources: ['si'],
  validity: 'A power that stays the same for the whole time; for a load that comes and goes, use its average power.',
  foundBy: ['watt-hours', 'kilowatt hours', 'how much electricity', 'joules'],
  caution: 'general',
  checks: ['energy from power and time'],
  work({ power, time }) {
    const energy = power * time;
    return {
      result: { energy },
      steps: [
        'Energy is power times time: E = P × t.',
        `E = ${put(power, 'W')} × ${put(time, 'h')}`,
        `E = ${out(energy, 'Wh')} = ${out(energy * 3600, 'J')}`,
      ],
    };
  },
});
