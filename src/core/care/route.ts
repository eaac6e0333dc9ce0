import type { Act } from "../items/campaign.ts";
import type { Band, Care, Route, Step, StepPart } from "./care.ts";
import type { ItemCare, PartCare } from "./item-care.ts";
import { cleaningOf, housingOf, imagingOf, type Work, type Workload, workloadOf } from "./minutes.ts";
import { type Norms, plus, times } from "./norms.ts";
import type { Reason } from "./reason.ts";
import { METHODS } from "./settle.ts";

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
/** The ordered acts an item still needs, with minutes, protection and stores; or why it has none. */
export function routeOf(norms: Norms, care: ItemCare): Route {
  const all = [care.whole, ...care.parts.map((part) => part.care)];
  const conditions = new Set(
    all.flatMap((each) => [...each.conditions, ...each.unsureConditions.filter(isHazard)]),
  );
  const load = workloadOf(care.item.facts, care.answers, conditions);
  const base = {
    item: care.item.id,
    conditions: [...conditions].filter((each) => each !== "water_sensitive"),
    wardLitres: litresOf(care),
    images: 0,
    wardDays: null,
    wardWhy: "",
    askWho: askedOf(all),
    steps: [],
  };
  const ward = wardOf(norms, care, conditions, load);
  const { images, steps } = stepsOf(norms, care, conditions, load, ward);
  const stoppedBy = stopsOf(care, steps);
  const unfinished = all.some((each) => each.missingTests.length > 0);
  if (care.done.has("box")) return { ...base, destiny: "done", stoppedBy: [] };
  if (stoppedBy.some((reason) => reason.tier === 1) || (stoppedBy.length > 0 && !unfinished))
    return { ...base, destiny: "set aside", stoppedBy };
  if (unfinished) return { ...base, destiny: "at the Door", stoppedBy: doorReasons(all) };
  return {
    ...base,
    destiny: "route",
    steps: steps.filter((step) => !care.done.has(step.act)),
    images,
    wardDays: ward?.days ?? null,
    wardWhy: ward?.why ?? "",
    stoppedBy: [],
  };
}

/** An unsure hazard acts as one; other doubts wait. */
const isHazard = (condition: string): boolean =>
  /mould|damp|wet|red_rot|flaking|nitrate|pesticide|arsenic|rodent|guano|insect_active|brittle/.test(
    condition,
  );

/** What each act does to an item; a ban on any of it keeps the act back. Cleaning is asked method by method. */
const DOES: Readonly<Partial<Record<Act, readonly string[]>>> = {
  covers: ["image_covers"],
  wrap: ["wrap_cover", "wrap_cover_final"],
  clean: ["clean_any", "clean_pages"],
  image: ["image", "image_pages", "image_in_camera_zone"],
};

/**
 * The route is walked: before each act the rules are asked again as things will then stand. Whatever they still forbid, or hold until
 * somebody outside the team has answered, sets the item aside, with the reasons.
 */
function stopsOf(care: ItemCare, steps: readonly Step[]): Reason[] {
  const stops = new Map<string, Reason>();
  const done = new Set(care.done);
  for (const { act } of steps) {
    const does = DOES[act];
    for (const { care: now } of does ? care.at(done, true) : [])
      for (const reason of bansOn(does ?? [], now) ?? holdsOf(now)) stops.set(reason.rule, reason);
    done.add(act);
  }
  return [...stops.values()].sort((a, b) => a.tier - b.tier);
}

function bansOn(does: readonly string[], now: Care): readonly Reason[] | null {
  const bans = does.flatMap((action) => now.banned.get(action) ?? []);
  return bans.length > 0 ? bans.flatMap((ban) => ban.reasons) : null;
}

/** Holds that end by somebody's answer; those of so many days are waits in the Ward, those that end by the team's own work pass. */
const holdsOf = (now: Care): readonly Reason[] =>
  now.require
    .filter(({ action, details }) => action === "hold_item" && details.days === undefined && !details.passes)
    .flatMap((ruling) => ruling.reasons);

/** The rules that wait for must-ask tests. */
const doorReasons = (all: readonly Care[]): Reason[] => {
  const waiting = all.flatMap((each) => each.forbid).filter((ban) => ban.until.includes("tests_answered"));
  const reasons = waiting.flatMap((ban) => ban.reasons);
  return [...new Map(reasons.map((reason) => [reason.rule, reason])).values()].slice(0, 1);
};

const askedOf = (all: readonly Care[]): string[] =>
  [...new Set(all.flatMap((each) => each.escalate.map((ruling) => ruling.action)))].filter(
    (each) => each !== "ask_conservator_if_consolidant",
  );

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
  const dirt = dirtOf(conditions, load);
  const [body, ...parts] = care.at(new Set([...care.done, "release", "covers", "wrap"]), true);
  const methods = methodsOf(body as PartCare, care.fineFilterVacuum);
  const ways = ownWays(body as PartCare, parts, care.fineFilterVacuum);
  const base = protectionOf(care);
  const step = (act: Act, work: Work, more: Partial<Step> = {}): Step => ({
    act,
    room: ROOM[act],
    norms: work.norms,
    minutes: work.minutes,
    exposed: false,
    methods: [],
    parts: [],
    protection: [],
    uses: {},
    dirt: 0,
    ...more,
  });
  const one = (id: string): Work => ({ norms: [id], minutes: norms.band(id) });
  const near = { exposed, protection: base, dirt };
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
  const asFound = load.mould && PHOTOGRAPHS.has(load.format) && !care.done.has("clean");
  if (load.redRot > 0 || asFound) steps.push(step("covers", one("i-covers"), near));
  if (load.redRot > 0)
    steps.push(
      step("wrap", one("w-paper"), {
        ...near,
        dirt: dirt > 2 ? dirt : 2,
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
      steps.push(step("clean", cleaningOf(norms, load), { ...near, methods, parts: ways, uses: sponges }));
    }
    steps.push(
      step("image", imaging.work, {
        protection: base.filter((each) => !each.startsWith("ppe_mould")), // growth has been cleaned off and released
        dirt: conditions.has("arsenic_suspected") ? 4 : 0,
      }),
    );
  }
  steps.push(step("box", housing, { ...(asFound ? near : {}), uses: housing.uses }));
  return { steps, images: asFound ? 6 : imaging.images };
}

/** What an item leaves on a station: poison, then growth and flood dirt, then red rot, then dust. */
function dirtOf(conditions: ReadonlySet<string>, load: Workload): Step["dirt"] {
  if (conditions.has("arsenic_suspected")) return 4;
  if (load.mould || conditions.has("flood_dirt")) return 3;
  return load.redRot > 0 ? 2 : 1;
}

/** The ways of cleaning open to a part when its turn comes, gentlest first. */
const methodsOf = ({ care }: PartCare, fineFilterVacuum: boolean): string[] =>
  METHODS.filter(
    (method) => !care.banned.has(method) && (method !== "clean_vacuum_mesh" || fineFilterVacuum),
  );

/** Parts whose surface has limits or methods of its own. */
function ownWays(body: PartCare, parts: readonly PartCare[], fineFilterVacuum: boolean): StepPart[] {
  const bans = (part: PartCare): string => [...part.care.banned.keys()].sort().join();
  return parts
    .filter((part) => bans(part) !== bans(body))
    .map((part) => ({
      name: part.name,
      leaves: part.leaves ?? 1,
      methods: methodsOf(part, fineFilterVacuum),
    }));
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
