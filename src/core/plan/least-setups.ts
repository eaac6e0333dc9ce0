/** Most jobs the subset programme takes: 2^13 sets of 13 last jobs are an instant and a megabyte. */
export const MOST_JOBS = 13;

/** Jobs on one station, numbered from 0, and what it costs to set it up between two of them. */
export interface SetupJobs {
  readonly count: number;
  /** Cost, 0 or more, of going from one job to the next; `null`: before the first, after the last. */
  readonly setup: (from: number | null, to: number | null) => number;
  /** Cost of doing a job once the jobs of the set `done` (bit j: job j) are behind it; default 0. */
  readonly placing?: (done: number, job: number) => number;
  /** `[first, then]`: somewhere before. */
  readonly mustFollow?: readonly (readonly [number, number])[];
}

/**
 * The order of least total cost, exactly; among equal orders the one whose first differing job has the lower number.
 * @returns null when the must-follow pairs close a circle.   More than 13 jobs throw.
 * Source: dynamic programming over subsets, Held and Karp, J. SIAM 10 (1962), from memory. We work from the last job to the first, so
 * that reading the order from the front settles ties.
 */
export function leastSetups(
  jobs: SetupJobs,
): { readonly order: readonly number[]; readonly cost: number } | null {
  const { count, setup, placing } = jobs;
  if (count > MOST_JOBS)
    throw new Error(
      `leastSetups takes at most ${MOST_JOBS} jobs and was given ${count}: order by class instead.`,
    );
  const before = new Int32Array(count);
  for (const [first, then] of jobs.mustFollow ?? []) before[then] = (before[then] ?? 0) | (1 << first);
  const all = (1 << count) - 1;
  const between = Float64Array.from({ length: count * count }, (_, at) =>
    setup(Math.floor(at / count), at % count),
  );
  /** Least cost of all that is left once the set is done and `last` was its last job. */
  const rest = new Float64Array((all + 1) * count);
  for (let last = 0; last < count; last++) rest[all * count + last] = setup(last, null);

  const mayFollow = (done: number, next: number): boolean =>
    (done & (1 << next)) === 0 && ((before[next] as number) & ~done) === 0;
  /** Cost of all that is left when `next` comes now. */
  const onFrom = (done: number, next: number): number =>
    (placing?.(done, next) ?? 0) + (rest[(done | (1 << next)) * count + next] as number);

  for (let done = all - 1; done > 0; done--) {
    for (let last = 0; last < count; last++) rest[done * count + last] = Number.POSITIVE_INFINITY;
    for (let next = 0; next < count; next++) {
      if (!mayFollow(done, next)) continue;
      const on = onFrom(done, next);
      for (let last = 0; last < count; last++) {
        if ((done & (1 << last)) === 0) continue;
        const cost = (between[last * count + next] as number) + on;
        if (cost < (rest[done * count + last] as number)) rest[done * count + last] = cost;
      }
    }
  }
  const bestAfter = (done: number, last: number | null): { next: number; cost: number } => {
    let best = { next: -1, cost: Number.POSITIVE_INFINITY };
    for (let next = 0; next < count; next++) {
      if (!mayFollow(done, next)) continue;
      const cost = setup(last, next) + onFrom(done, next);
      if (cost < best.cost) best = { next, cost };
    }
    return best;
  };

  if (count === 0) return { order: [], cost: 0 };
  const { cost } = bestAfter(0, null);
  if (cost === Number.POSITIVE_INFINITY) return null;
  const order: number[] = [];
  for (let done = 0, last: number | null = null; done !== all; done |= 1 << (last as number)) {
    last = bestAfter(done, last).next;
    order.push(last);
  }
  return { order, cost };
}
