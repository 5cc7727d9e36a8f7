/**
 * Quantiles of the F distribution to about 1e-13, since the small packages that have them stop near 1e-9. The incomplete beta function is
 * its continued fraction (DLMF 8.17.22); the factor before it comes from Stirling's series, so that nothing cancels for large samples.
 */

/**
 * The value below which the share `p` of the F distribution with `d1` and `d2` degrees of freedom lies.
 * @throws RangeError unless 0 < p < 1 and both degrees are above nought
 */
export function fQuantile(p: number, d1: number, d2: number): number {
  if (!(p > 0 && p < 1 && d1 > 0 && d2 > 0)) throw new RangeError(`no quantile ${p} of F with ${d1} and ${d2} degrees of freedom`);
  const [a, b] = [d1 / 2, d2 / 2];
  // Newton's steps on the logarithm of F, kept between what is known to be too low and too high.
  let [low, high, at] = [-700, 700, 0];
  for (let step = 0; step < 200; step += 1) {
    const [x, y] = shares(d1 * Math.exp(at), d2);
    const over = below(a, b, x, y) - p;
    if (over > 0) high = at;
    else low = at;
    // The derivative by the logarithm of F is the very factor before the continued fraction.
    const next = at - over / density(a, b, x, y);
    const better = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(better - at) <= 1e-15 * Math.max(1, Math.abs(at))) return Math.exp(better);
    at = better;
  }
  return Math.exp(at);
}

/** Two parts of a whole, each as a share, so that neither is lost beside the other. */
const shares = (one: number, other: number): [number, number] => [one / (one + other), other / (one + other)];

/** The regularised incomplete beta function at x, with y = 1 - x. */
function below(a: number, b: number, x: number, y: number): number {
  // The fraction converges fast on the near side of the mean, and the far side is what is left.
  return x <= (a + 1) / (a + b + 2) ? (density(a, b, x, y) / a) * fraction(a, b, x) : 1 - (density(a, b, x, y) / b) * fraction(b, a, y);
}

/** x^a y^b / B(a, b): the distance of x from the mean as a deviance, and the rest by Stirling's series (as C. Loader does, 2000). */
function density(a: number, b: number, x: number, y: number): number {
  const sum = a + b;
  const deviance = a * Math.log(a / sum / x) + b * Math.log(b / sum / y);
  return Math.sqrt(((a / sum) * b) / (2 * Math.PI)) * Math.exp(beyondStirling(sum) - beyondStirling(a) - beyondStirling(b) - deviance);
}

/** What Stirling's formula leaves out: ln Γ(z) - [(z - ½) ln z - z + ½ ln 2π]. */
function beyondStirling(z: number): number {
  if (z < 16) return beyondStirling(z + 1) + (z + 0.5) * Math.log1p(1 / z) - 1;
  const square = 1 / (z * z);
  return (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square / 1188)))) / z;
}

/** The continued fraction by Lentz's way; its length grows with the root of the larger parameter. */
function fraction(a: number, b: number, x: number): number {
  let [c, d] = [1, 1 / (1 - ((a + b) * x) / (a + 1))];
  let value = d;
  for (let m = 1; m < 100_000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d);
    c = 1 + even / c;
    value *= c * d;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d);
    c = 1 + odd / c;
    value *= c * d;
    if (Math.abs(c * d - 1) < 3e-16) break;
  }
  return value;
}
