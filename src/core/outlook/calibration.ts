/**
 * How good predicted chances were: log loss, Brier score, area under the curve and a reliability diagram.
 * The formulas are the usual ones; bins are found by multiplying, since dividing by 0.05 misplaces rows on an edge.
 */

export interface Prediction {
  /** What was predicted, 0 to 1. */
  chance: number;
  happened: boolean;
}

export interface ReliabilityBin {
  from: number;
  to: number;
  count: number;
  meanPredicted: number;
  meanHappened: number;
}

export interface Calibration {
  count: number;
  meanPredicted: number;
  meanHappened: number;
  /** Mean of -ln of the chance given to what happened. A chance of exactly 0 or 1 is taken as 1e-15 away from it. */
  logLoss: number;
  /** Mean square of chance minus outcome. */
  brier: number;
  /** Chance that one that happened was given more than one that did not, ties counting half; null when only one outcome occurs. */
  auc: number | null;
  /** Root mean square of the bins' differences, weighted by their counts. */
  binnedError: number;
  /** Only those that hold something. */
  bins: ReliabilityBin[];
}

const closest = 1e-15;

/** @returns null when there is nothing to look at. */
export function calibrationOf(predictions: readonly Prediction[], binCount = 20): Calibration | null {
  const count = predictions.length;
  if (count === 0) return null;
  const bins = reliability(predictions, binCount);
  const mean = (of: (prediction: Prediction) => number) => predictions.reduce((sum, each) => sum + of(each), 0) / count;
  return {
    count,
    meanPredicted: mean(({ chance }) => chance),
    meanHappened: mean(({ happened }) => Number(happened)),
    logLoss: mean(({ chance, happened }) => {
      const given = Math.min(1 - closest, Math.max(closest, chance));
      return -Math.log(happened ? given : 1 - given);
    }),
    brier: mean(({ chance, happened }) => (chance - Number(happened)) ** 2),
    auc: areaUnderCurve(predictions),
    binnedError: Math.sqrt(bins.reduce((sum, bin) => sum + bin.count * (bin.meanPredicted - bin.meanHappened) ** 2, 0) / count),
    bins,
  };
}

/** Bins of equal width; each holds its lower edge, and the last one also 1. */
export function reliability(predictions: readonly Prediction[], binCount: number): ReliabilityBin[] {
  const held: Prediction[][] = Array.from({ length: binCount }, () => []);
  for (const prediction of predictions) held[Math.min(binCount - 1, Math.floor(binCount * prediction.chance))]?.push(prediction);
  return held.flatMap((rows, index) => {
    if (rows.length === 0) return [];
    const sum = (of: (prediction: Prediction) => number) => rows.reduce((total, each) => total + of(each), 0) / rows.length;
    return [
      {
        from: index / binCount,
        to: (index + 1) / binCount,
        count: rows.length,
        meanPredicted: sum(({ chance }) => chance),
        meanHappened: sum(({ happened }) => Number(happened)),
      },
    ];
  });
}

/** By ranks (Mann and Whitney), ties sharing the mean of their ranks. */
function areaUnderCurve(predictions: readonly Prediction[]): number | null {
  const sorted = [...predictions].sort((a, b) => a.chance - b.chance);
  const positives = sorted.filter(({ happened }) => happened).length;
  const negatives = sorted.length - positives;
  if (positives === 0 || negatives === 0) return null;
  let rankSum = 0;
  for (let from = 0; from < sorted.length;) {
    let to = from;
    while (to < sorted.length && sorted[to]?.chance === sorted[from]?.chance) to += 1;
    const rank = (from + 1 + to) / 2;
    for (let at = from; at < to; at += 1) if (sorted[at]?.happened === true) rankSum += rank;
    from = to;
  }
  return (rankSum - (positives * (positives + 1)) / 2) / (positives * negatives);
}
