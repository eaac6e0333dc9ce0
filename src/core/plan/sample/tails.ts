/* Tails of the two counts a sample can follow: drawn from an endless lot (binomial) or from a lot of so many (hypergeometric). */

const logs: number[] = [0];
/** ln n!, summed once and kept. */
function logFactorial(n: number): number {
  for (let k = logs.length; k <= n; k++) logs.push((logs[k - 1] as number) + Math.log(k));
  return logs[n] as number;
}
const logChoose = (n: number, k: number): number => logFactorial(n) - logFactorial(k) - logFactorial(n - k);

/** Sums terms from the k-th downward, each from the one before, until they no longer count. */
function sumDown(k: number, least: number, first: number, ratio: (k: number) => number): number {
  let term = first;
  let sum = 0;
  for (let at = k; at >= least; at--) {
    sum += term;
    const next = term * ratio(at);
    if (next < term && next < sum * 1e-17) break;
    term = next;
  }
  return Math.min(1, sum);
}

/** P(X ≤ x) of n looks with chance p each, 0 to 1. Sum of the binomial terms, each from its neighbour. */
export function binomialAtMost(x: number, n: number, p: number): number {
  if (x < 0) return 0;
  if (x >= n || p <= 0) return 1;
  if (p >= 1) return 0;
  if (x > n * p) return 1 - binomialAtMost(n - x - 1, n, 1 - p); // the shorter tail
  const first = Math.exp(logChoose(n, x) + x * Math.log(p) + (n - x) * Math.log1p(-p));
  return sumDown(x, 0, first, (k) => (k * (1 - p)) / ((n - k + 1) * p));
}

/** P(X ≤ x) of n looks, none twice, into a lot of `all` items of which `marked` have it. Sum of the hypergeometric terms. */
export function lotAtMost(x: number, n: number, marked: number, all: number): number {
  const least = Math.max(0, n - (all - marked));
  const most = Math.min(n, marked);
  if (x < least) return 0;
  if (x >= most) return 1;
  if (x > (n * marked) / all) return 1 - lotAtMost(n - x - 1, n, all - marked, all);
  const first = Math.exp(logChoose(marked, x) + logChoose(all - marked, n - x) - logChoose(all, n));
  return sumDown(x, least, first, (k) => (k * (all - marked - n + k)) / ((marked - k + 1) * (n - k + 1)));
}
