import type { PackSize } from "../../items/campaign.ts";
import type { Packing } from "../../plan/plan.ts";

/** Sizes are told apart to a thousandth of a unit. */
const GRAIN = 1000;

/**
 * The packs that hold at least so many units at the least cost; of those the fewest packs, of those the least left over. Exact.
 * Where a price is missing the fewest packs are taken, of those the least left over, and there is no cost.
 *
 * Packs to so many units are counted by dynamic programming over the units. It stays small however much is needed: let b be the pack with
 * the least price a unit, the larger of two alike. Among any b_size other packs some have sizes that sum to a multiple of b_size (two of their
 * running sums leave the same rest), and packs b in their place hold as much for no more money and, at the same money, in no more packs. So
 * a best choice has fewer than b_size others, and packs b can be taken at once until less than what those could hold is left.
 * @param need units, above 0; @param sizes at least one, each above 0
 */
export function choosePacks(need: number, sizes: readonly PackSize[]): Packing {
  const kinds = kindsOf(sizes);
  const isPriced = kinds.every(({ price }) => price !== undefined);
  const grain = kinds.map(({ size }) => Math.round(size * GRAIN)).reduce(commonDivisor);
  const units = kinds.map(({ size }) => Math.round((size * GRAIN) / grain));
  const prices = kinds.map(({ price }) => (isPriced ? Math.round((price ?? 0) * 100) : 1));
  const wanted = Math.max(1, Math.ceil((need * GRAIN) / grain - 1e-9));
  const best = cheapestByUnit(units, prices);
  const unit = units[best] ?? 1;
  const most = unit * Math.max(...units);
  const atOnce = Math.max(0, Math.ceil((wanted - most) / unit));
  const counts = fewestFor(wanted - atOnce * unit, units, prices);
  counts[best] = (counts[best] ?? 0) + atOnce;
  return packingOf(kinds, counts, need, isPriced);
}

/** Each size once, the lower price of two; without a price last of all. */
function kindsOf(sizes: readonly PackSize[]): PackSize[] {
  const bySize = new Map<number, PackSize>();
  for (const each of sizes) {
    const known = bySize.get(each.size);
    if (!known || (each.price ?? Number.POSITIVE_INFINITY) < (known.price ?? Number.POSITIVE_INFINITY))
      bySize.set(each.size, each);
  }
  return [...bySize.values()].sort((a, b) => b.size - a.size);
}

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/** Sizes come largest first, so that of two alike the larger is found. */
const cheapestByUnit = (units: readonly number[], prices: readonly number[]): number =>
  units.reduce((best, unit, k) => {
    const [price = 0, bestPrice = 0, bestUnit = 1] = [prices[k], prices[best], units[best]];
    return price * bestUnit < bestPrice * unit ? k : best;
  }, 0);

/** How many of each pack: cost, then packs, then units over, each least. */
function fewestFor(wanted: number, units: readonly number[], prices: readonly number[]): number[] {
  const cost = new Float64Array(wanted + 1);
  const packs = new Float64Array(wanted + 1);
  const over = new Float64Array(wanted + 1);
  const last = new Int32Array(wanted + 1);
  for (let n = 1; n <= wanted; n++) {
    cost[n] = Number.POSITIVE_INFINITY;
    for (let k = 0; k < units.length; k++) {
      const [unit = 1, price = 0] = [units[k], prices[k]];
      const rest = Math.max(0, n - unit);
      const money = (cost[rest] ?? 0) + price;
      const count = (packs[rest] ?? 0) + 1;
      const left = (over[rest] ?? 0) + Math.max(0, unit - n);
      const [m = 0, c = 0, l = 0] = [cost[n], packs[n], over[n]];
      if (money > m || (money === m && (count > c || (count === c && left >= l)))) continue;
      cost[n] = money;
      packs[n] = count;
      over[n] = left;
      last[n] = k;
    }
  }
  const counts = units.map(() => 0);
  for (let n = wanted; n > 0; n -= units[last[n] ?? 0] ?? 1)
    counts[last[n] ?? 0] = (counts[last[n] ?? 0] ?? 0) + 1;
  return counts;
}

function packingOf(
  kinds: readonly PackSize[],
  counts: readonly number[],
  need: number,
  isPriced: boolean,
): Packing {
  const packs = kinds.flatMap((kind, k) => (counts[k] ? [{ ...kind, count: counts[k] }] : []));
  const quantity = packs.reduce((sum, { size, count }) => sum + size * count, 0);
  return {
    packs,
    quantity: Math.round(quantity * GRAIN) / GRAIN,
    leftover: Math.max(0, Math.round((quantity - need) * GRAIN) / GRAIN),
    cost: isPriced
      ? packs.reduce((sum, { price = 0, count }) => sum + Math.round(price * 100) * count, 0) / 100
      : null,
  };
}
