import type { Step } from "../../../core/care/care.ts";
import { dirtLeft } from "../../../core/care/dirt-left.ts";
import type { Act } from "../../../core/items/campaign.ts";
import { type OnStation, sinceWiped } from "../../../core/log/since-wiped.ts";
import { WIPE_FROM } from "../../../core/plan/day-order.ts";
import { KINDS, kindOf } from "../../../core/plan/work.ts";
import { sayDirt } from "../../../core/say/conditions.ts";
import type { Now } from "../log/now.ts";
import { recentOf } from "./views.ts";

/** A station where a step can be done, and what must be wiped away first. */
export interface StationOpen {
  readonly id: string;
  readonly isPlanned: boolean;
  /** The last dirty item that lay here, another than this one; null: nothing has to be wiped away. */
  readonly before: { readonly item: string; readonly dirt: string } | null;
}

/** Where a step can be done: the planned station first.   @param item that comes now; what it left itself is not in its own way */
export function stationsFor(now: Now, item: string, step: Pick<Step, "act" | "exposed">): StationOpen[] {
  const planned = plannedAt(now, item, step.act);
  const left = sinceWiped(now.state, recentOf(now), (on) => placesOf(now, on));
  return idsFor(now, step)
    .map((id) => {
      const dirty = (left.get(id) ?? []).findLast((on) => on.item !== item && dirtOf(now, on) >= WIPE_FROM);
      const before = dirty ? { item: dirty.item, dirt: dirtWords(now, dirty) } : null;
      return { id, isPlanned: id === planned, before };
    })
    .sort((a, b) => Number(b.isPlanned) - Number(a.isPlanned));
}

/** Minutes a wipe-down usually takes. */
export const wipeMinutes = ({ tables }: Now, room: "bench" | "camera"): number =>
  tables.norms.band(room === "bench" ? "s-change" : "s-camera-decon").typical;

const plannedAt = ({ work, today }: Now, item: string, act: Act): string | undefined =>
  work?.assignments.find((each) => each.item === item && each.act === act && each.day === today)?.station;

const idsFor = ({ house }: Now, step: Pick<Step, "act" | "exposed">): string[] => {
  const kind = KINDS[kindOf(step)]?.station;
  return house.stations.filter((each) => each.kind === kind).map(({ id }) => id);
};

/** Where an act without a named station was done: where it was planned, else at any of its kind. */
function placesOf(now: Now, on: OnStation): readonly string[] {
  const planned = now.work?.assignments.find((each) => each.item === on.item && each.act === on.act)?.station;
  return planned ? [planned] : idsFor(now, on);
}

/** Near mould it is mould at least; what nobody can say counts as dirty. */
function dirtOf(now: Now, on: OnStation): number {
  const left = leftBy(now, on);
  return Math.max(on.exposed ? 3 : 0, left ?? WIPE_FROM);
}

function dirtWords(now: Now, on: OnStation): string {
  const left = leftBy(now, on);
  if (left === null && !on.exposed) return "";
  return sayDirt(Math.max(on.exposed ? 3 : 0, left ?? 0) as Step["dirt"]); // both are
}

function leftBy({ item, tables }: Now, on: OnStation): Step["dirt"] | null {
  const found = item(on.item);
  return found === null ? null : dirtLeft(tables.norms, found.care, on.act);
}
