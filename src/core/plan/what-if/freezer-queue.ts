import type { Route } from "../../care/care.ts";
import { addDays, type Day, daysBetween } from "../../units/day.ts";
import type { SupposedPlan } from "./supposed-plan.ts";

export interface Freezer {
  readonly items: number;
  /** From the door closed to the items back at room temperature and unpacked. */
  readonly cycleDays: number;
}

/** How long items with live insects would wait for a freezer of batches, against the plan as it is. */
export interface FreezerQueue extends Freezer {
  readonly toFreeze: number;
  readonly cycles: number;
  /** Days from reaching the Ward to the door closing: half, nine in ten, longest. */
  readonly waits: { readonly p50: number; readonly p90: number; readonly longest: number };
  /** Day the last batch is out; null: nothing to freeze. */
  readonly lastOut: Day | null;
  /** Items whose batch is out only after the end. */
  readonly tooLate: number;
}

/**
 * A batch starts as soon as the freezer is free and something waits, first come first; what lies in the Ward already is counted as not
 * yet frozen. Items the plan never admits are left out.
 */
export function freezerQueueOf(
  routes: readonly Route[],
  { planFrom, end, assignments }: SupposedPlan,
  freezer: Freezer,
): FreezerQueue {
  const admitted = new Map(
    assignments.flatMap((each) => (each.act === "admit" ? [[each.item, each.day]] : [])),
  );
  const waiting = routes
    .filter(({ destiny, conditions }) => destiny === "route" && conditions.includes("insect_active"))
    .flatMap(({ item, steps }) => {
      const day = admitted.get(item);
      if (day) return [daysBetween(planFrom, day)];
      return steps[0]?.act === "release" ? [0] : [];
    })
    .sort((a, b) => a - b);
  const waits: number[] = [];
  let free = 0;
  let cycles = 0;
  let tooLate = 0;
  const last = daysBetween(planFrom, end);
  while (waits.length < waiting.length) {
    const start = Math.max(free, waiting[waits.length] as number);
    free = start + freezer.cycleDays;
    cycles++;
    const batch = waiting.slice(waits.length, waits.length + freezer.items).filter((d) => d <= start);
    if (free > last) tooLate += batch.length;
    waits.push(...batch.map((d) => start - d));
  }
  waits.sort((a, b) => a - b);
  const at = (share: number): number =>
    waits[Math.min(waits.length - 1, Math.floor(share * waits.length))] ?? 0;
  return {
    ...freezer,
    toFreeze: waiting.length,
    cycles,
    waits: { p50: at(0.5), p90: at(0.9), longest: waits.at(-1) ?? 0 },
    lastOut: cycles > 0 ? addDays(planFrom, free) : null,
    tooLate,
  };
}
