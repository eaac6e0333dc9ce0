import type { Act } from "../items/campaign.ts";
import type { Band, Forbid, Reason, Route, Step } from "./care.ts";
import { METHODS } from "./decide.ts";
import type { ItemCare } from "./item-care.ts";
import { cleaningOf, housingOf, imagingOf, type Work, type Workload, workloadOf } from "./minutes.ts";
import { type Norms, plus, times } from "./norms.ts";

const ROOM: Readonly<Record<Act, Step["room"]>> = {
  survey: "Door",
  admit: "Ward",
  release: "Ward",
  covers: "Camera",
  wrap: "Bench",
  clean: "Bench",
  image: "Camera",
  box: "Shelf",
};
const PHOTOGRAPHS = new Set(["photo_print", "album", "glass_negative", "film_negative", "photo_cased"]);
/** Endings a team reaches by its own ordinary work: a ban with one of these is a wait, not a stop. */
const OWN_WORK = new Set(["dry_shown", "cleaned", "wrapped", "covers_pictured", "station_wiped"]);

/** The ordered acts an item still needs, with minutes, protection and stores; or why it has none. */
export function routeOf(norms: Norms, care: ItemCare): Route {
  const conditions = new Set(
    [care.whole, ...care.parts.map((part) => part.care)].flatMap((each) => [
      ...each.conditions,
      ...each.unsureConditions.filter(isHazard),
    ]),
  );
  const load = workloadOf(care.item.facts, care.answers, conditions);
  const stopped = stopsOf(care);
  const base = {
    item: care.item.id,
    conditions: [...conditions].filter((each) => each !== "water_sensitive"),
    wardLitres: litresOf(care),
    images: 0,
    wardDays: null,
    wardWhy: "",
    askWho: askedOf(care),
  };
  if (care.done.has("box")) return { ...base, destiny: "done", steps: [], stoppedBy: [] };
  if (care.whole.missingTests.length > 0 || care.parts.some((part) => part.care.missingTests.length > 0))
    return { ...base, destiny: "at the Door", steps: [], stoppedBy: ruleReasons(care, "N01") };
  if (stopped.length > 0) return { ...base, destiny: "set aside", steps: [], stoppedBy: stopped };
  const ward = wardOf(norms, care, conditions, load);
  const { images, steps } = stepsOf(norms, care, conditions, load, ward);
  const left = steps.filter((step) => !care.done.has(step.act));
  return {
    ...base,
    destiny: "route",
    steps: left,
    images,
    wardDays: ward?.days ?? null,
    wardWhy: ward?.why ?? "",
    stoppedBy: [],
  };
}

/** An unsure hazard acts as one; other doubts wait. */
const isHazard = (condition: string): boolean =>
  /mould|red_rot|flaking|nitrate|pesticide|arsenic|rodent|guano|insect_active|brittle/.test(condition);

/** Rules that stop the camera or every way of cleaning until someone outside the team has answered. */
function stopsOf(care: ItemCare): Reason[] {
  const stops = new Map<string, Reason>();
  for (const { forbid, require } of [care.whole, ...care.parts.map((part) => part.care)]) {
    for (const ban of forbid) if (ban.action === "image" || ban.action === "clean_any") addStops(ban, stops);
    for (const ruling of require)
      if (ruling.action === "hold_item")
        for (const reason of ruling.reasons)
          if (reason.rule === "N03" || reason.rule === "H11") stops.set(reason.rule, reason);
  }
  return [...stops.values()].sort((a, b) => a.tier - b.tier);
}

function addStops(ban: Forbid, stops: Map<string, Reason>): void {
  if (ban.until.every((until) => OWN_WORK.has(until) || until === "tests_answered")) return;
  for (const reason of ban.reasons)
    if (!["Q02", "Q06", "G01", "N01"].includes(reason.rule)) stops.set(reason.rule, reason);
}

function ruleReasons(care: ItemCare, rule: string): Reason[] {
  return [care.whole, ...care.parts.map((part) => part.care)]
    .flatMap((each) => each.forbid)
    .flatMap((each) => each.reasons)
    .filter(
      (reason, at, all) => reason.rule === rule && all.findIndex((other) => other.rule === rule) === at,
    );
}

function askedOf(care: ItemCare): string[] {
  const asked = [care.whole, ...care.parts.map((part) => part.care)].flatMap((each) =>
    each.escalate.map((ruling) => ruling.action),
  );
  return [...new Set(asked)].filter((each) => each !== "ask_conservator_if_consolidant");
}

/** Bag space: the item's volume two and a half times, for gel, reader and air; a file where sizes are missing. Common practice, no source. */
function litresOf({ item }: ItemCare): number {
  const { heightMm = 330, widthMm = 240, thicknessMm = 40 } = item;
  return Math.min(200, (2.5 * heightMm * widthMm * Math.max(5, thicknessMm)) / 1e6);
}

interface Ward {
  readonly days: Band;
  readonly why: string;
}

const longest = (a: Ward | null, b: Ward): Ward => (a && a.days.typical >= b.days.typical ? a : b);

/** The wait in quarantine from the norms: drying, watching or freezing, whichever is longest, and the two readings a day apart. */
function wardOf(norms: Norms, care: ItemCare, conditions: ReadonlySet<string>, load: Workload): Ward | null {
  if (care.done.has("release") || care.done.has("clean")) return null;
  const check: Band = { low: 1, typical: 1, high: 2 }; // d-check, days between the two readings
  let ward: Ward | null = null;
  const wait = (norm: string, why: string): void => {
    ward = longest(ward, { days: plus(norms.band(norm), check), why });
  };
  if (conditions.has("wet")) wait("d-wet-air", "drying from wet");
  if (conditions.has("damp") || conditions.has("mould_active")) wait(dryingNorm(load, care), "drying");
  if (conditions.has("mould_dormant"))
    ward = longest(ward, { days: { low: 2, typical: 2, high: 3 }, why: "two readings a day apart" });
  if (conditions.has("mould_suspected")) wait("d-frass", "second look after 14 days");
  if (conditions.has("insect_active")) wait("d-freeze20", "freezing or watching for insects");
  if (conditions.has("insect_uncertain")) wait("d-frass", "watching for fresh insect dust");
  return ward;
}

function dryingNorm(load: Workload, { item }: ItemCare): string {
  if (PHOTOGRAPHS.has(load.format)) return "d-photo";
  if (load.format === "palm_leaf_bundle" || load.format === "bark_manuscript") return "d-palm";
  if (load.format === "bound_volume" || load.format === "album" || load.format === "newspaper")
    return (item.thicknessMm ?? 40) > 50 ? "d-vol-thick" : "d-vol-mid";
  return "d-file-thin";
}

function stepsOf(
  norms: Norms,
  care: ItemCare,
  conditions: ReadonlySet<string>,
  load: Workload,
  ward: Ward | null,
) {
  const exposed = load.mould;
  const dirt = load.mould ? 3 : load.redRot > 0 ? 2 : 1;
  const methods = methodsOf(care);
  const base = protectionOf(care);
  const step = (act: Act, work: Work, more: Partial<Step> = {}): Step => ({
    act,
    room: ROOM[act],
    norms: work.norms,
    minutes: work.minutes,
    exposed: false,
    methods: [],
    protection: [],
    uses: {},
    dirt: 0,
    ...more,
  });
  const one = (id: string): Work => ({ norms: [id], minutes: norms.band(id) });
  const near = { exposed, protection: base, dirt: dirt as Step["dirt"] };
  const steps: Step[] = [];
  const massKg = typeof care.item.facts.mass_kg === "number" ? care.item.facts.mass_kg : 1;
  const drying = conditions.has("damp") || conditions.has("wet") || conditions.has("mould_active");
  if (ward) {
    const uses = { "k-bag": 1.2, ...(drying ? { "k-gel": 0.4 * massKg } : {}) };
    const looks = times(norms.band("t-quarantine-check"), Math.ceil(ward.days.typical / 3) + 1);
    steps.push(step("admit", one("t-quarantine-in"), { ...near, uses }));
    steps.push(
      step(
        "release",
        { norms: ["t-release", "t-quarantine-check"], minutes: plus(norms.band("t-release"), looks) },
        near,
      ),
    );
  }
  const asFound = load.mould && PHOTOGRAPHS.has(load.format);
  if (load.redRot > 0 || asFound) steps.push(step("covers", one("i-covers"), near));
  if (load.redRot > 0)
    steps.push(
      step("wrap", one("w-paper"), {
        protection: base,
        dirt: 2,
        uses: { "k-wrap-paper": 0.5, "k-tape": 1.5 },
      }),
    );
  const housing = housingOf(norms, load);
  const imaging = imagingOf(norms, load);
  if (!asFound) {
    if (methods.length > 0) {
      const sponges = methods.includes("clean_sponge")
        ? { "k-sponge-light": (load.leaves * Math.max(load.affected, 0.1)) / 100 }
        : {};
      steps.push(step("clean", cleaningOf(norms, load), { ...near, methods, uses: sponges }));
    }
    steps.push(
      step("image", imaging.work, {
        protection: base.filter((each) => !each.startsWith("ppe_mould")), // growth has been cleaned off and released
        dirt: conditions.has("arsenic_suspected") ? 4 : 0,
      }),
    );
  }
  steps.push(step("box", housing, { uses: housing.uses }));
  return { steps, images: asFound ? 6 : imaging.images };
}

/** Ways of cleaning no rule forbids for good, gentlest first. */
function methodsOf(care: ItemCare): string[] {
  const bans = new Map(care.whole.forbid.map((each) => [each.action, each]));
  return METHODS.filter((method) => {
    if (method === "clean_vacuum_mesh" && !care.fineFilterVacuum) return false;
    const ban = bans.get(method);
    return ban === undefined || ban.until.every((until) => OWN_WORK.has(until));
  });
}

/** What people wear, the strictest of all parts. */
function protectionOf(care: ItemCare): string[] {
  const wanted = [
    "ppe_mould_heavy",
    "ppe_mould_base",
    "ppe_mask",
    "gloves",
    "gloves_nitrile",
    "gloves_double",
    "second_person",
  ];
  const required = new Set(
    [care.whole, ...care.parts.map((part) => part.care)].flatMap((each) =>
      each.require.map((ruling) => ruling.action),
    ),
  );
  return wanted.filter((each) => required.has(each));
}
