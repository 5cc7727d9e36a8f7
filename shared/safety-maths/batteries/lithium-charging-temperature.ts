import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { put } from '../working.js';

/** Temperatures between which a lithium-ion cell may be charged, °C. Source: cell makers' specifications. */
const [lowest, highest] = [0, 45];

/** Whether a lithium-ion cell is within the usual temperatures for charging, 0 °C to 45 °C. In °C. Source: cell makers' specifications. */
export const lithiumChargingTemperature = calculation({
  id: 'lithium-charging-temperature',
  title: 'Too cold or too hot to charge a lithium battery',
  topic: 'batteries',
  formula: '0 °C ≤ t ≤ 45 °C',
  inputs: { temperature: quantity('temperature of the cell itself', '°C', { min: -60, max: 100 }) },
  outputs: { within_range: null, lowest: '°C', highest: '°C' },
  sources: ['lithiumCells'],
  validity: 'Usual lithium-ion cells; the maker’s own range comes first, and the cell takes hours to warm through after a cold night.',
  foundBy: ['charge in the cold', 'frozen battery', 'charging temperature', 'battery left in a car', 'winter'],
  caution: 'lithium',
  checks: [
    {
      name: 'lithium-ion charging temperature range',
      inputs: { temperature: 20 },
      keys: { min_C: 'lowest', max_C: 'highest' },
    },
  ],
  work({ temperature }) {
    const within = temperature >= lowest && temperature <= highest;
    return {
      result: { within_range: within, lowest, highest },
      steps: [
        `Usual range for charging: ${put(lowest, '°C')} to ${put(highest, '°C')}; here ${put(temperature, '°C')}.`,
        within
          ? 'It is within the usual range. The maker’s own range comes first.'
          : 'It is outside the usual range: do not charge. Never charge a frozen cell; it can fail and burn later.',
      ],
    };
  },
});
