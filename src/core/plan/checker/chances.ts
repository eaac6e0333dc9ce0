import type { Day } from "../../units/day.ts";
import type { DayRange, ItemChance } from "../plan.ts";
import type { Fault } from "./fault.ts";
import type { PlanOnPaper } from "./plan-on-paper.ts";

/* What the plan says of luck: it must hold together, for nobody can count it again from the work. */

const SHARES = [
  ["p10", 0.1],
  ["p50", 0.5],
  ["p90", 0.9],
] as const;
/** Shares are counts over campaigns; a rounding may be lost. */
const TOLERANCE = 1e-6;
const MOST_WATCHED = 10;
const KINDS_OF_LUCK = 5;

export function chanceFaults(paper: PlanOnPaper): Fault[] {
  const { items, watch, drivers } = paper.plan.risk;
  const lines = new Map(items.map((each) => [each.item, each]));
  const faults = items.flatMap((each) => lineFaults(paper, each));
  const add = (figure: string, got: number | string, limit: number | string, item?: string): void => {
    faults.push(faultOf(figure, got, limit, item));
  };
  if (lines.size !== items.length) add("lines", items.length, lines.size);
  for (const { item } of paper.plan.itemDays) if (!lines.has(item)) add("lines", "none", "one", item);
  for (const item of watch)
    if (!lines.has(item) || !paper.itemDays.get(item)?.days.box)
      add("watch", item, "an item the plan boxes", item);
  if (new Set(watch).size !== watch.length || watch.length > MOST_WATCHED)
    add("watch", watch.length, MOST_WATCHED);
  if (new Set(drivers.map(({ luck }) => luck)).size !== KINDS_OF_LUCK)
    add("drivers", drivers.length, KINDS_OF_LUCK);
  return [...faults, ...unfinishedFaults(paper)];
}

/** Days in order and inside the plan, the camera before the box, and each day where its share of campaigns says there is one. */
function lineFaults({ items, campaign }: PlanOnPaper, line: ItemChance): Fault[] {
  const faults: Fault[] = [];
  const add = (figure: string, got: number | string, limit: number | string): void => {
    faults.push(faultOf(figure, got, limit, line.item));
  };
  const item = items.get(line.item);
  if (!item) add("item", line.item, "an item of the campaign");
  else if (line.must !== (item.priority === "must")) add("must", String(line.must), item.priority);
  for (const [act, range] of Object.entries({ image: line.image, box: line.box }))
    if (range && !isRising(range, campaign.planFrom, campaign.end)) add(act, written(range), "rising days");
  for (const [name, share] of SHARES) {
    if (line.image && isLater(line.image[name], line.box[name]))
      add(`image ${name}`, line.image[name] ?? "after the end", line.box[name] ?? "after the end");
    if ((line.box[name] !== null) !== line.boxed >= share - TOLERANCE)
      add(`box ${name}`, line.box[name] ?? "after the end", `${line.boxed} boxed by the end`);
  }
  for (const figure of ["boxed", "late", "last"] as const)
    if (!(line[figure] >= 0 && line[figure] <= 1)) add(figure, line[figure], "0 to 1");
  if (line.late < 1 - line.boxed - TOLERANCE) add("late", line.late, 1 - line.boxed);
  return faults;
}

/** A finish by a day in that share of campaigns: no more than the others may leave something. */
function unfinishedFaults({ plan: { finish, routed } }: PlanOnPaper): Fault[] {
  const finished = (finish.draws - finish.unfinished) / finish.draws;
  return SHARES.filter(
    ([name, share]) => routed > 0 && (finish[name] !== null) !== finished >= share - TOLERANCE,
  ).map(([name]) => faultOf(`unfinished beside ${name}`, finish.unfinished, `of ${finish.draws}`));
}

const faultOf = (figure: string, got: number | string, limit: number | string, item?: string): Fault => ({
  code: "chance",
  ...(item === undefined ? {} : { item }),
  figure,
  got,
  limit,
  source: "the simulated campaigns",
});

const isLater = (one: Day | null, other: Day | null): boolean =>
  other !== null && (one === null || one > other);

const isRising = ({ p10, p50, p90 }: DayRange, from: Day, end: Day): boolean =>
  !isLater(p10, p50) &&
  !isLater(p50, p90) &&
  [p10, p50, p90].every((day) => day === null || (day >= from && day <= end));

const written = ({ p10, p50, p90 }: DayRange): string =>
  [p10, p50, p90].map((day) => day ?? "after the end").join(", ");
