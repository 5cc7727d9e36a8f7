import { calculation } from '../calculation.js';
import { choice, quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { coaxes, curveOf } from './coax-table.js';
import { foot } from './loss-per-100-feet.js';

/**
 * Typical loss of coaxial cable: a = k₁ × √f + k₂ × f, drawn through the table's figures at 30 MHz and 150 MHz. Cable by type, frequency in
 * MHz (1.8 to 450); loss in dB/100 m. Source: corrected table of a licence manual; curve from transmission-line texts.
 */
export const coaxLoss = calculation({
  id: 'coax-loss',
  title: 'Typical loss of coaxial cable',
  topic: 'radio',
  formula: 'a = k₁ × √f + k₂ × f',
  inputs: {
    cable: choice('type of cable', Object.keys(coaxes) as (keyof typeof coaxes)[]),
    frequency: quantity('frequency', 'MHz', { min: 1.8, max: 450 }),
  },
  outputs: { loss: 'dB/100 m' },
  sources: ['coaxLoss', 'coaxCurve', 'foot'],
  validity:
    'New, dry cable into a matched antenna; makers differ by about 10 %, and beside 30 MHz and 150 MHz the figures are from a curve.',
  foundBy: ['coax loss', 'RG-58', 'RG-213', 'feeder attenuation', 'which coax'],
  caution: 'rf',
  checks: ['loss of coaxial cable (typical)'],
  work({ cable, frequency }) {
    const row = coaxes[cable];
    const { metal, insulation } = curveOf(row);
    const perFeet = metal * Math.sqrt(frequency) + insulation * frequency;
    const loss = perFeet / foot;
    return {
      result: { loss },
      steps: [
        `The table gives ${cable} ${put(row.at30, 'dB')} in 100 ft at 30 MHz and ${put(row.at150, 'dB')} at 150 MHz.`,
        'A curve through both, f in megahertz: a = k₁ × √f + k₂ × f.',
        `a = ${out(metal, '')} × √(${put(frequency, '')}) + ${out(insulation, '')} × ${put(frequency, '')} = ${out(perFeet, '')}`,
        `In 100 m, ${put(100 / foot, 'ft')}: a / 0.3048 = ${out(perFeet, '')} / ${put(foot, '')} = ${out(loss, '')}`,
        `Typical loss: ${out(loss, 'dB/100 m')}. Old or wet cable loses more; the maker’s own figure comes first.`,
      ],
    };
  },
});
