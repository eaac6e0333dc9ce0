import type { Care, Route } from "../../core/care/care.ts";
import type { ItemCare } from "../../core/care/item-care.ts";
import type { Reason } from "../../core/care/reason.ts";
import { sayDo, sayNot } from "../../core/say/actions.ts";
import { sayCondition } from "../../core/say/conditions.ts";
import { benchSteps, whenAtBench } from "./bench-card-steps.ts";
import { printedBans } from "./printed-bans.ts";
import type { BenchCardView } from "./views.ts";

export interface CardContext {
  readonly campaign: string;
  readonly endings: Readonly<Record<string, string>>;
  /** Families of acts: a ban on the family is printed once. */
  readonly families: ReadonlyMap<string, readonly string[]>;
  /** Consumable id → `wrapper paper (m2)`. */
  readonly storeWords: (use: string) => string;
}

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
    steps: route.steps.flatMap((step) => benchSteps(step, care, context.storeWords)),
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
