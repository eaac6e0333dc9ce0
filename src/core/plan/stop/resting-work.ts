import { valuesWith } from "../../care/evaluate.ts";
import type { ItemCare, PartCare } from "../../care/item-care.ts";
import { type Norms, plus, times } from "../../care/norms.ts";
import type { Rest, RuleBook } from "../../care/rule-book.ts";
import { NO } from "../../care/truth.ts";
import type { Act } from "../../items/campaign.ts";
import { expected } from "../work.ts";

/** Where an item must lie at the stop, and what bringing it there takes. */
export interface RestingNeed {
  readonly rest: Rest;
  /** Place of the resting state in the list: the most pressing first. */
  readonly rank: number;
  /** Still wet: its clock runs in hours. */
  readonly wet: boolean;
  /** Not shown dry yet: it rests only while somebody reads it. */
  readonly drying: boolean;
  /** Expected minutes; 0: it lies so already, or nothing is to be done. */
  readonly minutes: number;
  /** The act whose people and place it takes. */
  readonly act: Act;
  /** The minutes go on the mould account: growth, or something that harms people. */
  readonly exposed: boolean;
  readonly protection: readonly string[];
  /** Consumable → quantity. */
  readonly uses: Readonly<Record<string, number>>;
  /** Not for the team: nobody goes near until help from outside is there. */
  readonly outsideHelp: boolean;
}

interface RestingWork {
  /** Norms of the minutes; `leaf`: once a leaf; `piece`: a tenth for what lies ten to a box. */
  readonly norms: readonly (readonly [id: string, per: "item" | "leaf" | "piece"])[];
  readonly act: Act;
  /** Consumables, by the norm's typical quantity; `kg`: for each kilogram. */
  readonly uses: readonly (readonly [id: string, per: "item" | "piece" | "kg"])[];
}

/** What each act of a resting state takes, and two states that are no act of the rules. Common practice, no source, but for the norms. */
export const RESTING_WORK: Readonly<Record<string, RestingWork>> = {
  isolate: { norms: [["t-quarantine-in", "item"]], act: "admit", uses: [["k-bag", "item"]] },
  dry_desiccant: { norms: [], act: "admit", uses: [["k-gel", "kg"]] },
  face_up_air_dry: { norms: [], act: "admit", uses: [] },
  dry_slow_held_flat: { norms: [], act: "admit", uses: [] },
  interleave: { norms: [["w-sleeve", "leaf"]], act: "admit", uses: [] },
  label_hazard: { norms: [], act: "admit", uses: [["k-label", "item"]] },
  store_separate: { norms: [], act: "box", uses: [] },
  vent_store: { norms: [["w-readybox", "piece"]], act: "box", uses: [["k-box-vol", "piece"]] },
  image_tray: { norms: [["w-readybox", "piece"]], act: "box", uses: [["k-box-vol", "piece"]] },
  sink_mat: { norms: [["w-tray", "item"]], act: "box", uses: [] },
  wrap_temporary: {
    norms: [["w-temp", "item"]],
    act: "wrap",
    uses: [
      ["k-wrap-paper", "item"],
      ["k-tape", "item"],
    ],
  },
};

/** What lies ten to a box. */
const SMALL = new Set(["film_negative", "glass_negative", "photo_print", "loose_sheets"]);
const MOULD = ["mould_active", "mould_dormant", "mould_suspected"];
/** What the two readings of a release end, and what cleaning ends. */
const ENDED_BY: Readonly<Partial<Record<Act, readonly string[]>>> = {
  release: ["wet", "damp", "insect_active", "insect_uncertain"],
  clean: [...MOULD],
};

/** Every part's resting state as the item stands now; the most pressing one rules the whole. */
export function restingNeed(book: RuleBook, norms: Norms, care: ItemCare, bagged: boolean): RestingNeed {
  const parts = [{ name: "", leaves: null, care: care.whole }, ...care.parts];
  const now = parts.map((part) => standing(book, part, care.done));
  const rests = now.map(({ rest }) => rest).sort((a, b) => book.rests.indexOf(a) - book.rests.indexOf(b));
  const rest = rests[0] as Rest;
  const conditions = new Set(now.flatMap((each) => each.conditions));
  const acts = new Set(rests.flatMap((each) => [each.id, ...each.acts]));
  const danger = acts.has("label_hazard");
  const works = [...acts].flatMap((act) => (liesSo(act, care.done, bagged) ? [] : (RESTING_WORK[act] ?? [])));
  const minutes = expected(
    plus(...works.flatMap((work) => work.norms.map((norm) => bandOf(norms, care, norm)))),
  );
  return {
    rest,
    rank: book.rests.indexOf(rest),
    wet: conditions.has("wet"),
    drying: conditions.has("wet") || conditions.has("damp") || conditions.has("mould_active"),
    minutes,
    act: works.find((work) => work.norms.length > 0)?.act ?? "admit",
    exposed: danger || MOULD.some((each) => conditions.has(each)),
    protection: protectionOf(parts),
    uses: usesOf(norms, care, works),
    outsideHelp: conditions.has("nitrate_advanced"),
  };
}

/** A part's conditions and resting state once what was done is counted. */
function standing(book: RuleBook, { care }: PartCare, done: ReadonlySet<Act>) {
  const ended = new Set([...done].flatMap((act) => ENDED_BY[act] ?? []));
  const shownDry = done.has("release");
  const still = (conditions: readonly string[]): string[] => [
    ...new Set(
      conditions
        .filter((each) => !ended.has(each))
        .map((each) => (shownDry && each === "mould_active" ? "mould_dormant" : each)),
    ),
  ];
  const conditions = still(care.conditions);
  const unsureConditions = still(care.unsureConditions);
  const values = valuesWith(book, { facts: care.facts, conditions, unsureConditions });
  const rest = book.rests.find(
    ({ holds, acts }) => holds(values) !== NO && !acts.some((act) => care.banned.has(act)),
  );
  return { conditions: [...conditions, ...unsureConditions], rest: rest ?? (book.rests.at(-1) as Rest) };
}

/** Whether that was done before: a bag closed, a wrapper on. */
const liesSo = (act: string, done: ReadonlySet<Act>, bagged: boolean): boolean =>
  act === "wrap_temporary" ? done.has("wrap") : bagged;

function bandOf(norms: Norms, care: ItemCare, [id, per]: RestingWork["norms"][number]) {
  const { format, leaves } = care.item.facts;
  const often =
    per === "leaf" ? (typeof leaves === "number" ? leaves : 1) : per === "piece" ? shareOf(format) : 1;
  return times(norms.band(id), often);
}

const shareOf = (format: unknown): number => (SMALL.has(String(format)) ? 0.1 : 1);

function usesOf(norms: Norms, { item }: ItemCare, works: readonly RestingWork[]): Record<string, number> {
  const uses: Record<string, number> = {};
  const { format, mass_kg: mass } = item.facts;
  for (const [id, per] of works.flatMap((work) => work.uses)) {
    const often =
      per === "kg" ? (typeof mass === "number" ? mass : 1) : per === "piece" ? shareOf(format) : 1;
    const each = id === "k-box-vol" || id === "k-label" ? 1 : norms.band(id).typical;
    uses[id] = Math.max(uses[id] ?? 0, each * often);
  }
  return uses;
}

/** What people wear near it, the strictest of all parts, as the rules require it. */
const protectionOf = (parts: readonly PartCare[]): string[] =>
  [...new Set(parts.flatMap(({ care }) => care.require.map(({ action }) => action)))]
    .filter((action) => /^(ppe_|gloves|second_person)/.test(action))
    .sort()
    .reverse();
