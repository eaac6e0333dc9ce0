import type { Care, Forbid, Route, Step } from "../../core/care/care.ts";
import type { ItemCare, PartCare } from "../../core/care/item-care.ts";
import type { Reason } from "../../core/care/reason.ts";
import { sayDo, sayNot } from "../../core/say/actions.ts";
import { sayAct, sayCondition } from "../../core/say/conditions.ts";
import type { BenchCardView, BenchStep } from "./views.ts";

export interface CardContext {
  readonly campaign: string;
  readonly endings: Readonly<Record<string, string>>;
  /** Families of acts: a ban on the family is printed once. */
  readonly families: ReadonlyMap<string, readonly string[]>;
  /** Consumable id → `wrapper paper (m2)`. */
  readonly storeWords: (use: string) => string;
}

/** Bans that speak of people, tools, stations or the whole team, and stand on the day sheet and at the door instead. */
const ELSEWHERE =
  /^(assign_|continue_work|work_alone|start_session|remove_respirator|drop_ppe|eat_drink|bare_device|use_tool|ethanol_on_surface|spray_|store_health|skip_|vacuum_ordinary|quarantine_as|test_)/;
/** Required acts that the card asks for before and after the work. */
const BEFORE = [
  "check_identity",
  "record_photo_before",
  "picture_tied",
  "number_leaves",
  "record_order",
  "label_outside_bag",
  "inspect_neighbours",
  "retest_smear",
  "image_as_found",
  "clean_at_extract_or_aired_room",
  "hepa_vacuum_only",
  "damp_catch_cloth",
];
const AFTER = [
  "second_observer_release",
  "recheck",
  "copy_old_label",
  "tie_with_tape",
  "own_box",
  "shelf_off_floor",
];

/** One item's card: what it has, what to do in order, what never, what not yet, and why. */
export function benchCardView(care: ItemCare, route: Route, context: CardContext): BenchCardView {
  const { item } = care;
  const all = [care.whole, ...care.parts.map((part) => part.care)];
  const bans = printedBans(care.whole, context.families);
  const released = care.at(new Set([...care.done, "release"])).map((part) => part.care);
  const [atBench, ...partsAtBench] = whenAtBench(care);
  const later = [...all, ...released];
  const required = new Set(later.flatMap((each) => each.require.map((ruling) => ruling.action)));
  const wanted = new Set(all.flatMap((each) => each.prefer.map((ruling) => ruling.action)));
  const codes = all.flatMap((each) =>
    each.require.flatMap((ruling) =>
      Array.isArray(ruling.details.codes) ? ruling.details.codes.map(String) : [],
    ),
  );
  return {
    campaign: context.campaign,
    item: item.id,
    title: item.title,
    format: formatLine(care),
    parts: partsAtBench.map((part) => partLine(part.name, part.care, atBench.care, context.families)),
    where: item.foundIn ?? "",
    conditions: conditionsOf(all, route),
    steps: route.steps.flatMap((step) => benchSteps(step, care, context)),
    never: bans.filter((ban) => ban.until.includes("never")).map((ban) => sayNot(ban.action)),
    notYet: bans
      .filter((ban) => !ban.until.includes("never"))
      .map((ban) => ({
        action: sayNot(ban.action),
        until: ban.until.map((until) => context.endings[until] ?? until).join(", and "),
      })),
    stops: [
      "colour or fibre on the tool",
      "powder, droppings or a sharp smell",
      "a leaf, print or roll that resists",
    ],
    askWho: [
      ...new Set([
        ...route.askWho.map((who) => sayDo(who).replace(/^Ask /, "")),
        ...route.stoppedBy.map((reason) => `Set aside: ${reason.text}`),
      ]),
    ],
    lookBefore: BEFORE.filter((act) => required.has(act) || wanted.has(act)).map(sayDo),
    lookAfter: AFTER.filter((act) => required.has(act) || wanted.has(act)).map(sayDo),
    custodianRule: item.custodianRule ?? "",
    signs: [
      ...new Set([
        ...codes,
        ...(required.has("ppe_mould_base") ? ["M017", "M009", "M004", "M010"] : []),
        ...(required.has("gloves") ? ["M009"] : []),
      ]),
    ],
    reasons: reasonsOf(all),
  };
}

/** Body and parts as the rules have them when the item lies on the bench: what they still forbid then is what the cleaner must know. */
const whenAtBench = (care: ItemCare): readonly [PartCare, ...PartCare[]] =>
  care.at(new Set([...care.done, "release", "covers", "wrap"]), true) as readonly [PartCare, ...PartCare[]];

function formatLine({ item }: ItemCare): string {
  const size =
    item.heightMm && item.widthMm
      ? `${item.heightMm} × ${item.widthMm}${item.thicknessMm ? ` × ${item.thicknessMm}` : ""} mm`
      : "";
  const leaves =
    typeof item.facts.leaves === "number" && item.facts.leaves > 1 ? `${item.facts.leaves} leaves` : "";
  const cover =
    typeof item.facts.cover === "string" && item.facts.cover !== "none"
      ? `cover: ${item.facts.cover.replaceAll("_", " ")}`
      : "";
  const format = String(item.facts.format).replaceAll("_", " ");
  return [format.charAt(0).toUpperCase() + format.slice(1), leaves, size, cover]
    .filter((each) => each !== "")
    .join(", ");
}

/** What a part may not have that the rest may. */
function partLine(name: string, care: Care, whole: Care, families: CardContext["families"]): string {
  const known = new Set(whole.forbid.map((ban) => ban.action));
  const own = printedBans(care, families).filter((ban) => !known.has(ban.action));
  return own.length === 0
    ? `${name}: as the rest`
    : `${name}: no ${own.map((ban) => sayNot(ban.action).toLowerCase()).join(", no ")}`;
}

/** Bans about the item, each family once, people's safety first. */
function printedBans(care: Care, families: CardContext["families"]): Forbid[] {
  const banned = new Map(care.forbid.map((ban) => [ban.action, ban]));
  const covered = new Set<string>();
  for (const [family, members] of families) {
    const whole = banned.get(family);
    if (whole) for (const member of members) if (sameEnd(whole, banned.get(member))) covered.add(member);
  }
  return care.forbid
    .filter((ban) => !covered.has(ban.action) && !ELSEWHERE.test(ban.action))
    .sort((a, b) => tierOf(a) - tierOf(b));
}

/** A member is told apart when it outlasts its family: for ever where the family is banned for now, or until more has happened. */
const sameEnd = (family: Forbid, member: Forbid | undefined): boolean =>
  member !== undefined &&
  (family.until.includes("never") || member.until.every((until) => family.until.includes(until)));

const tierOf = (ban: Forbid): number => Math.min(...ban.reasons.map((reason) => reason.tier));

function conditionsOf(all: readonly Care[], route: Route): string[] {
  const sure = new Set(all.flatMap((care) => care.conditions));
  const doubtful = new Set(all.flatMap((care) => care.unsureConditions).filter((each) => !sure.has(each)));
  return [
    ...[...sure]
      .filter((each) => each !== "water_sensitive" || route.conditions.length === 0)
      .map(sayCondition),
    ...[...doubtful].map((each) => `${sayCondition(each)}? Unsure: handled as if it were`),
  ];
}

/** A step, and after it a row of its own for each part that is done another way at the same sitting. */
function benchSteps(step: Step, care: ItemCare, context: CardContext): BenchStep[] {
  const leaves = typeof care.item.facts.leaves === "number" ? care.item.facts.leaves : 1;
  const all = step.parts.reduce((sum, part) => sum + part.leaves, leaves);
  const share = (part: number, of: Step): Step => ({
    ...of,
    minutes: {
      low: (of.minutes.low * part) / all,
      typical: (of.minutes.typical * part) / all,
      high: (of.minutes.high * part) / all,
    },
  });
  const [atBench, ...parts] = whenAtBench(care);
  const body = benchStep(share(leaves, step), atBench.care, context);
  if (step.parts.length === 0) return [body];
  return [
    { ...body, act: `${body.act}: the rest` },
    ...step.parts.map((part): BenchStep => {
      const own = parts.find((each) => each.name === part.name)?.care ?? atBench.care;
      const row = benchStep({ ...share(part.leaves, step), methods: part.methods, uses: {} }, own, context);
      const act = `${sayAct(step.act)}: ${part.name}`;
      return part.methods.length > 0 ? { ...row, act } : { ...row, act: `${act}: leave as it is` };
    }),
  ];
}

function benchStep(step: Step, care: Care, { storeWords }: CardContext): BenchStep {
  const { low, high } = step.minutes;
  const [from, to] = [Math.max(1, Math.round(low)), Math.max(1, Math.round(high))];
  return {
    room: step.room,
    act: sayAct(step.act),
    methods: step.methods.map((method, at) => methodWords(method, care, at === 0)),
    minutes: from === to ? `${from}` : `${from} to ${to}`,
    exposed: step.exposed,
    protection: worn(step.protection).map(sayDo),
    uses: Object.entries(step.uses)
      .filter(([, quantity]) => quantity >= 0.05)
      .map(
        ([use, quantity]) =>
          `about ${quantity < 10 ? Math.round(quantity * 10) / 10 : Math.round(quantity)} ${storeWords(use)}`,
      ),
  };
}

/** The base and heavy sets hold mask and gloves already. */
export const worn = (protection: readonly string[]): string[] =>
  protection.some((each) => each.startsWith("ppe_mould"))
    ? protection.filter(
        (each) => each.startsWith("ppe_mould") || each === "second_person" || each === "gloves_double",
      )
    : [...protection];

/** A method with the places where it is banned: `soft brush (never: brushing the green part)`. */
function methodWords(method: string, care: Care, first: boolean): string {
  const words = sayDo(method);
  const bans = care.forbid.filter((ban) => ban.action.startsWith(`${method}_`) && ban.action !== method);
  const start = first ? words : words.charAt(0).toLowerCase() + words.slice(1);
  return bans.length === 0
    ? start
    : `${start} (never: ${bans.map((ban) => sayNot(ban.action).toLowerCase()).join(", ")})`;
}

/** Each rule once, people's safety first. */
function reasonsOf(all: readonly Care[]): BenchCardView["reasons"] {
  const found = new Map<string, Reason>();
  for (const care of all)
    for (const ruling of [...care.forbid, ...care.require, ...care.escalate])
      for (const reason of ruling.reasons) found.set(reason.rule, reason);
  return [...found.values()]
    .sort((a, b) => a.tier - b.tier || a.rule.localeCompare(b.rule))
    .map((reason) => ({
      rule: reason.rule,
      text: reason.text,
      source:
        reason.sourceStatus === "common practice"
          ? reason.source
          : `${shortSource(reason.source)}: ${reason.sourceStatus}`,
    }));
}

const shortSource = (source: string): string =>
  source.length > 60 ? `${source.slice(0, 57).trimEnd()} …` : source;
