import type { Item } from "../../items/campaign.ts";
import { addDays, type Day, daysBetween } from "../../units/day.ts";
import type { WardForecast } from "../../ward/forecast.ts";
import { conditionsOf } from "./contamination.ts";
import type { Fault } from "./fault.ts";
import type { PlanOnPaper } from "./plan-on-paper.ts";

/** Litres by which rounding may lift the sum. */
const ROUNDING = 0.5;
/** The two readings stand a day apart (W07). */
const SECOND_READING = 1;

/** Never more in the Ward than it holds, what lies there already among it; nobody released before the wait is over. */
export function wardFaults(paper: PlanOnPaper, bags: ReadonlyMap<string, WardForecast>): Fault[] {
  return [...litreFaults(paper), ...waitFaults(paper, bags)];
}

/** Litres a bag of the item fills: two and a half times its volume, a file's where sizes are missing. Common practice, no source. */
const litresOf = ({ heightMm, widthMm, thicknessMm }: Item): number =>
  Math.min(200, (2.5 * (heightMm ?? 330) * (widthMm ?? 240) * Math.max(5, thicknessMm ?? 40)) / 1e6);

const isInWard = (paper: PlanOnPaper, item: string): boolean => {
  const done = paper.care.get(item)?.done;
  return done !== undefined && done.has("admit") && !done.has("release") && !done.has("clean");
};

/** What lies there on the first morning counts; only a day on which the plan admits more can break the limit. */
function litreFaults(paper: PlanOnPaper): Fault[] {
  const { planFrom, end, wardLitres } = paper.campaign;
  const days = Math.max(0, daysBetween(planFrom, end) + 1);
  const into = new Float64Array(days);
  const outOf = new Float64Array(days);
  const add = (litres: Float64Array, item: Item, day: Day): void => {
    const d = daysBetween(planFrom, day);
    if (d >= 0 && d < days) litres[d] = (litres[d] ?? 0) + litresOf(item);
  };
  let inside = 0;
  for (const item of paper.campaign.items) {
    const passings = paper.passings.get(item.id) ?? [];
    const admitted = passings.find(({ act }) => act === "admit")?.first;
    if (isInWard(paper, item.id)) inside += litresOf(item);
    else if (admitted) add(into, item, admitted);
    else continue;
    const released = passings.find(({ act }) => act === "release")?.ends;
    if (released) add(outOf, item, released);
  }
  const faults: Fault[] = [];
  for (let d = 0; d < days; d++) {
    const admitted = into[d] ?? 0;
    inside += admitted - (outOf[d] ?? 0);
    if (admitted > 0 && inside > wardLitres + ROUNDING)
      faults.push({
        code: "ward-litres",
        day: addDays(planFrom, d),
        got: Math.round(inside),
        limit: wardLitres,
        source: "campaign",
      });
  }
  return faults;
}

function waitFaults(paper: PlanOnPaper, bags: ReadonlyMap<string, WardForecast>): Fault[] {
  const { planFrom, sessions, ward } = paper.campaign;
  const closed = ward.filter(({ what }) => what === "closed").reverse(); // the first closing of a bag stands
  const admissions = new Map(
    [...sessions.filter(({ act }) => act === "admit"), ...closed].map(({ item, day }) => [item, day]),
  );
  return [...paper.passings].flatMap(([item, passings]): Fault[] => {
    const release = passings.find(({ act }) => act === "release");
    if (!release) return [];
    const bag = bags.get(item);
    if (bag && bag.from !== "norm less the days behind") {
      const limit = addDays(planFrom, Math.floor(bag.days.low));
      return release.first < limit
        ? [
            {
              code: "ward-wait",
              day: release.first,
              item,
              got: release.first,
              limit,
              source: "the bag's readings",
            },
          ]
        : [];
    }
    const admitted = passings.find(({ act }) => act === "admit")?.last ?? admissions.get(item);
    const wait = leastWait(paper, item);
    if (!admitted || !wait) return [];
    const limit = addDays(admitted, wait.days);
    return release.first < limit
      ? [{ code: "ward-wait", day: release.first, item, got: release.first, limit, source: wait.source }]
      : [];
  });
}

/** The wait in days and the norm it comes from: the longest that any condition asks for, at its typical value. */
function leastWait(paper: PlanOnPaper, id: string): { days: number; source: string } | null {
  const care = paper.care.get(id);
  if (!care) return null;
  const conditions = conditionsOf(care);
  const waits: { days: number; source: string }[] = [];
  const wait = (norm: string): void => {
    waits.push({ days: Math.floor(paper.typical(norm) + SECOND_READING), source: norm });
  };
  if (conditions.has("wet")) wait("d-wet-air");
  if (conditions.has("damp") || conditions.has("mould_active")) wait(dryingNorm(care.item));
  if (conditions.has("mould_dormant")) waits.push({ days: 2, source: "W07" });
  if (conditions.has("mould_suspected")) wait("d-frass");
  if (conditions.has("insect_active")) wait("d-freeze20");
  if (care.whole.conditions.includes("insect_uncertain")) wait("d-frass");
  return waits.sort((a, b) => b.days - a.days)[0] ?? null;
}

const DRYING_NORMS: Readonly<Record<string, string>> = {
  photo_print: "d-photo",
  album: "d-photo",
  glass_negative: "d-photo",
  film_negative: "d-photo",
  photo_cased: "d-photo",
  palm_leaf_bundle: "d-palm",
  bark_manuscript: "d-palm",
  bound_volume: "d-vol",
  newspaper: "d-vol",
};

/** A volume of more than 5 cm takes the longer norm. */
function dryingNorm({ facts, thicknessMm }: Item): string {
  const norm = DRYING_NORMS[String(facts.format)] ?? "d-file-thin";
  if (norm !== "d-vol") return norm;
  return (thicknessMm ?? 40) > 50 ? "d-vol-thick" : "d-vol-mid";
}
