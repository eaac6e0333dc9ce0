import type { ItemCare } from "../../care/item-care.ts";
import type { Campaign, Item } from "../../items/campaign.ts";
import { addDays, type Day, dayNumber, daysBetween } from "../../units/day.ts";
import { wardRoomOf } from "../../ward/forecast.ts";
import { itemInWard } from "../../ward/item-in-ward.ts";
import { conditionsOf } from "./contamination.ts";
import type { Fault } from "./fault.ts";
import type { PlanOnPaper } from "./plan-on-paper.ts";

/** Litres by which rounding may lift the sum. */
const ROUNDING = 0.5;
/** The two readings stand a day apart (W07). */
const SECOND_READING = 1;

/** Never more in the Ward than it holds, what lies there already among it; nobody released before the wait is over. */
export function wardFaults(paper: PlanOnPaper): Fault[] {
  return [...litreFaults(paper), ...waitFaults(paper)];
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

/** Nobody counts on a release before the longest wait that holds for the item is over. */
function waitFaults(paper: PlanOnPaper): Fault[] {
  const closed = closedDays(paper.campaign);
  const faults: Fault[] = [];
  for (const [item, passings] of paper.passings) {
    const care = paper.care.get(item);
    const release = passings.find(({ act }) => act === "release");
    const admitted = passings.find(({ act }) => act === "admit")?.last ?? closed.get(item);
    if (!care || !release || !admitted) continue;
    const ends = [...watchesOf(paper, care, admitted), dryOf(paper, care, admitted)];
    const [last] = ends.sort((a, b) => (a.day < b.day ? 1 : -1));
    if (last && release.first < last.day)
      faults.push({
        code: "ward-wait",
        day: release.first,
        item,
        got: release.first,
        limit: last.day,
        source: last.source,
      });
  }
  return faults;
}

/** When each item in the Ward was shut in: the first closing of its bag, else its admission. */
function closedDays({ sessions, ward }: Campaign): Map<string, Day> {
  const first = ward.filter(({ what }) => what === "closed").reverse();
  const admissions = sessions.filter(({ act }) => act === "admit");
  return new Map([...admissions, ...first].map(({ item, day }) => [item, day]));
}

/** The day a wait ends, and the norm, rule or reading it comes from. */
interface End {
  readonly day: Day;
  readonly source: string;
}

/** Waits that no reading shortens: watching and freezing, at the norm's typical value. */
function watchesOf(paper: PlanOnPaper, care: ItemCare, admitted: Day): End[] {
  const conditions = conditionsOf(care);
  const norms = [
    ...(conditions.has("mould_suspected") ? ["d-frass"] : []),
    ...(conditions.has("insect_active") ? ["d-freeze20"] : []),
    ...(care.whole.conditions.includes("insect_uncertain") ? ["d-frass"] : []),
  ];
  return norms.map((norm) => endOf(paper, norm, admitted));
}

/** The end of drying: by the bag's own readings where there are any, else by the norm; two readings at the least. */
function dryOf(paper: PlanOnPaper, care: ItemCare, admitted: Day): End {
  const byReadings = endByReadings(paper.campaign, care.item);
  if (byReadings) return byReadings;
  const conditions = conditionsOf(care);
  const norms = [
    ...(conditions.has("wet") ? ["d-wet-air"] : []),
    ...(conditions.has("damp") || conditions.has("mould_active") ? [dryingNorm(care.item)] : []),
  ];
  const ends = norms.map((norm) => endOf(paper, norm, admitted));
  const looks = conditions.has("mould_dormant") ? 2 : 0;
  const twoLooks: End = { day: addDays(admitted, looks), source: "W07" };
  return [twoLooks, ...ends].reduce((a, b) => (b.day > a.day ? b : a));
}

const endOf = (paper: PlanOnPaper, norm: string, admitted: Day): End => ({
  day: addDays(admitted, Math.floor(paper.typical(norm) + SECOND_READING)),
  source: norm,
});

/** The earliest day, one chance in ten, by the drying model and the bag's readings; null: nothing to go by. */
function endByReadings(campaign: Campaign, item: Item): End | null {
  const { planFrom } = campaign;
  const notes = campaign.ward.filter((note) => note.item === item.id && note.day < planFrom);
  if (notes.length === 0) return null;
  const now = dayNumber(planFrom) * 24;
  const { state, ready } = itemInWard(item, notes, wardRoomOf(campaign), now);
  const source = "the bag's readings";
  if (state.release.earned) return { day: planFrom, source };
  const hours = ready.ok ? ready.hours : ready.planning;
  if (!hours || !Number.isFinite(hours.p90)) return null;
  const days = Math.max(0, (hours.p10 - now) / 24) + SECOND_READING;
  return { day: addDays(planFrom, Math.floor(days)), source };
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
