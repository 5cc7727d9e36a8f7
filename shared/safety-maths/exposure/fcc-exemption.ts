import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { fccExemptions } from './fcc-table.js';
import { bandAt, lawText, spanStep, valueOf } from './limit-bands.js';
import { nearestUse } from './near-field.js';

/**
 * The ERP below which the FCC asks for no evaluation, for people no nearer than a distance. Frequency in MHz, distance in m; ERP in W, null
 * nearer than λ/2π, where the rule does not hold; that distance in m. Source: 47 CFR 1.1307(b)(3)(i)(C).
 */
export const fccExemption = calculation({
  id: 'fcc-exemption',
  title: 'ERP exempt from FCC evaluation',
  topic: 'exposure',
  formula: 'ERP = row of 47 CFR 1.1307(b)(3)(i)(C) × R²',
  inputs: {
    frequency: quantity('frequency', 'MHz', { min: 0.3, max: 100_000 }),
    distance: quantity('distance of the nearest person from the antenna', 'm', { min: 0.01, max: 1000 }),
  },
  outputs: { erp: 'W', least_distance: 'm' },
  sources: ['fccExemption', 'fccExemptionHf'],
  validity:
    'One antenna in the United States, with the average ERP and every person at least λ/2π away; several antennas are added up by the rule’s own sum.',
  rule: 'FCC exemption by ERP; there are two others, for very low power',
  foundBy: ['FCC exemption', 'exempt from evaluation', 'do I need an RF evaluation', 'ERP threshold'],
  regionDependence: 'United States rules',
  caution: 'rf',
  checks: ['FCC exemption: ERP threshold at a distance'],
  work({ frequency, distance }) {
    const band = bandAt(fccExemptions, frequency);
    const least = nearestUse(frequency);
    const erp = distance < least ? null : valueOf(band.perSquareMetre, frequency) * distance * distance;
    return {
      result: { erp, least_distance: least },
      steps: [
        `The rule holds from R = λ / 2π = ${out(least, 'm')} on.`,
        spanStep(band, frequency),
        erp === null
          ? `${put(distance, 'm')} is nearer than that, so this rule exempts nothing.`
          : `ERP = ${lawText(band.perSquareMetre)} × R² = ${lawText(band.perSquareMetre, put(frequency, ''))} × ${put(distance, '')}² = ${out(erp, 'W')} (f in MHz, R in m)`,
        'Above this an evaluation is asked for; it does not mean that the limits are passed.',
      ],
    };
  },
});
