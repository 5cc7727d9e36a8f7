import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { calibrationOf } from '../../../src/core/outlook/calibration.js';
import { atLeast, countDistribution } from '../../../src/core/outlook/poisson-binomial.js';
import { wilsonInterval } from '../../../src/core/outlook/wilson.js';

/**
 * Held against tests/data/poisson-binomial.json (rational arithmetic; R PoissonBinomial::ppbinom and stats::pbinom agree to 1.4e-15),
 * wilson.json (40 digits; R stats::prop.test agrees to 6.1e-16) and calibration.json (rational arithmetic; R and pROC agree to 3.4e-16).
 */
const data = (name: string): unknown => JSON.parse(readFileSync(new URL(`../../data/${name}.json`, import.meta.url), 'utf8'));

const { vectors } = data('poisson-binomial') as {
  vectors: { name: string; p: number[]; upperTail: { k: number; atLeast: number }[]; pmf: number[] | null }[];
};
const { rows } = data('wilson') as { rows: { x: number; n: number; lower: number; upper: number }[] };
const calibration = data('calibration') as {
  rows: { p: number; y: number }[];
  metrics: Record<'n' | 'meanPredicted' | 'meanObserved' | 'logLoss' | 'brier' | 'auc' | 'rmseBins20', number>;
  bins: { bin: number; count: number; meanPredicted: number | null; meanObserved: number | null }[];
};

describe('the chance of at least so many right answers', () => {
  it.each(vectors)('is that of exact arithmetic for $name, to 1e-12', ({ p, upperTail, pmf }) => {
    for (const { k, atLeast: expected } of upperTail) expect(Math.abs(atLeast(p, k) - expected)).toBeLessThan(1e-12);
    if (Array.isArray(pmf)) {
      const distribution = countDistribution(p);
      pmf.forEach((expected, k) => expect(Math.abs((distribution[k] as number) - expected)).toBeLessThan(1e-12));
    }
  });

  it('is 1 for nothing wanted and 0 for more than there is', () => {
    expect([atLeast([], 0), atLeast([], 1), atLeast([0.5], -3), atLeast([0.5], 2)]).toEqual([1, 0, 1, 0]);
  });

  it('refuses what is no chance', () => {
    for (const wrong of [-0.1, 1.1, Number.NaN]) expect(() => atLeast([0.5, wrong], 1)).toThrow(RangeError);
  });
});

describe('the interval of a share', () => {
  it.each(rows)('is Wilson’s for $x of $n', ({ x, n, lower, upper }) => {
    const interval = wilsonInterval(x, n);
    expect(Math.abs((interval?.low as number) - lower)).toBeLessThan(1e-12);
    expect(Math.abs((interval?.high as number) - upper)).toBeLessThan(1e-12);
  });

  it('is nothing for nothing, and refuses what is no share', () => {
    expect(wilsonInterval(0, 0)).toBeNull();
    expect(() => wilsonInterval(3, 2)).toThrow(RangeError);
    expect(() => wilsonInterval(1.5, 2)).toThrow(RangeError);
  });
});

describe('how good predictions were', () => {
  const { metrics, bins } = calibration;
  const worked = calibrationOf(calibration.rows.map(({ p, y }) => ({ chance: p, happened: y === 1 })));

  it('agrees with the worked example in every figure', () => {
    expect(worked?.count).toBe(metrics.n);
    for (const [ours, theirs] of [
      [worked?.meanPredicted, metrics.meanPredicted],
      [worked?.meanHappened, metrics.meanObserved],
      [worked?.logLoss, metrics.logLoss],
      [worked?.brier, metrics.brier],
      [worked?.auc, metrics.auc],
      [worked?.binnedError, metrics.rmseBins20],
    ] as [number, number][]) {
      expect(Math.abs(ours - theirs)).toBeLessThan(1e-12);
    }
  });

  it('puts rows on the edge of a bin into the upper one', () => {
    const expected = bins.filter(({ count }) => count > 0);
    expect(worked?.bins.map(({ count }) => count)).toEqual(expected.map(({ count }) => count));
    worked?.bins.forEach((bin, index) => {
      expect(bin.meanPredicted).toBeCloseTo(expected[index]?.meanPredicted as number, 12);
      expect(bin.meanHappened).toBeCloseTo(expected[index]?.meanObserved as number, 12);
    });
  });

  it('has no area under the curve where only one thing happened, and nothing to say of nothing', () => {
    expect(calibrationOf([{ chance: 0.4, happened: true }])?.auc).toBeNull();
    expect(calibrationOf([])).toBeNull();
  });
});
