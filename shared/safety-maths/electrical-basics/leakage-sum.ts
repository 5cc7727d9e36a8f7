import { calculation } from '../calculation.js';
import { CalculationInputError, optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';

const number = { min: 0, max: 1000 };
const leakage = { min: 0, max: 100 };

/**
 * The standing leakage of many devices behind one RCD: I = n1 × i1 + n2 × i2 + n3 × i3, as a share of the RCD's rating and against the
 * 30 % that the British wiring rules allow. Leakages in mA, RCD in mA (30 mA if left out); total in mA, share in %. A number without its
 * leakage, or the other way about, and a number that is not whole are refused. Source: BS 7671; IEC 61008-1 (no tripping at half).
 */
export const leakageSum = calculation({
  id: 'leakage-sum',
  title: 'Leakage of many devices behind one RCD',
  topic: 'electrical-basics',
  formula: 'I_total = n₁ × I₁ + n₂ × I₂ + …',
  inputs: {
    number_first: quantity('how many of the first kind', '', { min: 1, max: 1000 }),
    leakage_first: quantity('leakage of each of the first kind', 'mA', leakage),
    number_second: optional(quantity('how many of the second kind', '', number)),
    leakage_second: optional(quantity('leakage of each of the second kind', 'mA', leakage)),
    number_third: optional(quantity('how many of the third kind', '', number)),
    leakage_third: optional(quantity('leakage of each of the third kind', 'mA', leakage)),
    rcd: optional(quantity('rating of the RCD', 'mA', { min: 5, max: 1000 })),
  },
  outputs: { total: 'mA', share_of_rcd: '%', within_30_percent: null },
  sources: ['standingLeakage', 'rcdHalf'],
  validity: 'Normal leakage of healthy equipment, added straight up; real leakages partly cancel, so the sum errs on the cautious side.',
  rule: 'The 30 % guide of the British wiring rules',
  foundBy: ['RCD keeps tripping', 'nuisance tripping', 'earth leakage', 'many power supplies', '30 mA'],
  regionDependence: 'the 30 % guide is British; North American class A interrupters trip at 4 mA to 6 mA and need another sum',
  caution: 'mains',
  checks: [],
  work(given) {
    const { rcd = 30 } = given;
    const kinds = [
      kind('first', given.number_first, given.leakage_first),
      kind('second', given.number_second, given.leakage_second),
      kind('third', given.number_third, given.leakage_third),
    ].filter((one) => one !== null);
    const total = kinds.reduce((sum, { count, each }) => sum + count * each, 0);
    const share = (total / rcd) * 100;
    return {
      result: { total, share_of_rcd: share, within_30_percent: total * 10 <= rcd * 3 },
      steps: [
        `I_total = ${kinds.map(({ count, each }) => `${put(count, '')} × ${put(each, 'mA')}`).join(' + ')} = ${out(total, 'mA')}`,
        `Share of the RCD: ${out(total, 'mA')} / ${put(rcd, 'mA')} = ${out(share, '%')}`,
        `The guide is 30 %, here ${out((rcd * 3) / 10, 'mA')}; above half, ${out(rcd / 2, 'mA')}, the RCD may trip with nothing wrong.`,
        'Never bridge or swap an RCD that trips: have the circuits split by a competent electrician.',
      ],
    };
  },
});

/** One kind of device; null if it is left out altogether. */
function kind(which: string, count: number | undefined, each: number | undefined): { count: number; each: number } | null {
  if (count === undefined && each === undefined) return null;
  if (count === undefined) throw new CalculationInputError(`number_${which}`, `is missing; give it with the leakage of the ${which} kind`);
  if (each === undefined) throw new CalculationInputError(`leakage_${which}`, `is missing; give it with the number of the ${which} kind`);
  if (!Number.isInteger(count)) throw new CalculationInputError(`number_${which}`, `${put(count, '')} is not a whole number; give a count`);
  return { count, each };
}
