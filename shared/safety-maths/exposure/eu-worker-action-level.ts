import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { euWorkerLevels } from './eu-worker-table.js';
import { lawText, valueOf } from './limit-bands.js';

/**
 * The lower action level of the EU for workers. Frequency in MHz, 0.003 to 300 000; electric field in V/m, power density in W/m², null
 * where none is set. Source: Directive 2013/35/EU, as adopted in Norway, section 12-1.
 */
export const euWorkerActionLevel = calculation({
  id: 'eu-worker-action-level',
  title: 'EU action level for workers',
  topic: 'exposure',
  formula: 'row of the lower action levels of Directive 2013/35/EU',
  inputs: { frequency: quantity('frequency', 'MHz', { min: 0.003, max: 300_000 }) },
  outputs: { electric_field: 'V/m', power_density: 'W/m²' },
  sources: ['euWorkers'],
  validity: 'People at work only, never the public: above it the employer must act; family, neighbours and visitors have lower limits.',
  rule: 'Directive 2013/35/EU, lower action level',
  regionDependence: 'EU and EEA law on people at work',
  caution: 'rf',
  checks: ['EU worker action level (electric field)'],
  work({ frequency }) {
    const [lowest] = euWorkerLevels;
    const { from, electric, density } = euWorkerLevels.find(({ below }) => frequency < below) ?? lowest;
    const field = valueOf(electric, frequency);
    const formula = electric.power === 0 ? '' : `${lawText(electric)} = ${lawText(electric, put(frequency, ''))} = `;
    return {
      result: { electric_field: field, power_density: density === null ? null : valueOf(density, frequency) },
      steps: [
        `${put(frequency, 'MHz')} lies in the row that begins at ${put(from, 'MHz')}.`,
        `Lower action level: E = ${formula}${out(field, 'V/m')}${electric.power === 0 ? '' : ' (f in MHz)'}`,
        density === null ? 'No power density is set in this row.' : `Power density: S = ${out(valueOf(density, frequency), 'W/m²')}`,
        'It is for trained people at work. The public has lower limits.',
      ],
    };
  },
});
