import type { Act, Campaign, Finding, Item, Place } from "../items/campaign.ts";
import { type Facts, type FactValue, UNSURE } from "../items/facts.ts";
import type { Care } from "./care.ts";
import { decide } from "./decide.ts";
import type { RuleBook } from "./rule-book.ts";

/** The care of one item: of the whole, and of each part with materials of its own. */
export interface ItemCare {
  readonly item: Item;
  readonly whole: Care;
  /** The whole item's care once dryness is shown: what the Bench goes by; null when it is shown already or nothing grows. */
  readonly ahead: Care | null;
  /** Whether the place has a fine-filter vacuum. */
  readonly fineFilterVacuum: boolean;
  readonly parts: readonly { readonly name: string; readonly care: Care }[];
  readonly done: ReadonlySet<Act>;
  /** Answers for the whole item, by test. */
  readonly answers: Readonly<Record<string, FactValue>>;
}

/** Care for every item of a campaign. Items with the same facts share one evaluation. */
export function careOfCampaign(book: RuleBook, campaign: Campaign): ItemCare[] {
  const findings = grouped(campaign.findings, (each) => each.item);
  const sessions = grouped(campaign.sessions, (each) => each.item);
  const decided = new Map<string, Care>();
  const decideOnce = (facts: Facts): Care => {
    const key = JSON.stringify(facts);
    const known = decided.get(key) ?? decide(book, facts);
    decided.set(key, known);
    return known;
  };
  return campaign.items.map((item) => {
    const own = findings.get(item.id) ?? [];
    const done = new Set((sessions.get(item.id) ?? []).map((session) => session.act));
    return careOfItem(decideOnce, item, own, campaign.place, done);
  });
}

function careOfItem(
  decideOnce: (facts: Facts) => Care,
  item: Item,
  findings: readonly Finding[],
  place: Place,
  done: ReadonlySet<Act>,
): ItemCare {
  const whole = answersOf(findings.filter((each) => each.part === ""));
  const around = { ...siteFacts(place), ...stateFacts(done), "plan.step": ["clean", "image", "rehouse"] };
  const facts = {
    ...around,
    ...named("item", item.facts),
    ...named("obs", whole.answers),
    ...whole.doubt,
  };
  const care = decideOnce(facts);
  const grows = [...care.conditions, ...care.unsureConditions].some((each) => each.startsWith("mould_"));
  const ahead = grows && !done.has("release") ? decideOnce({ ...facts, "state.dry_verified": "yes" }) : null;
  const parts = item.parts.map((part) => {
    const own = answersOf(findings.filter((each) => each.part === part.name));
    const ofPart = {
      ...around,
      ...named("item", { ...item.facts, ...part.facts }),
      ...named("obs", { ...whole.answers, ...own.answers }),
      ...whole.doubt,
      ...own.doubt,
    };
    return { name: part.name, care: decideOnce(ofPart) };
  });
  return {
    item,
    whole: care,
    ahead,
    fineFilterVacuum: place.fineFilterVacuum,
    parts,
    done,
    answers: whole.answers,
  };
}

/** The newest answer to each test stands; two that differ on one day are a disagreement: unsure, until a third look (N02). */
function answersOf(findings: readonly Finding[]): { answers: Record<string, FactValue>; doubt: Facts } {
  const newest = new Map<string, Finding>();
  let disagree = false;
  for (const each of findings) {
    const known = newest.get(each.test);
    const order = known ? (each.day ?? "").localeCompare(known.day ?? "") : 1;
    if (order > 0) newest.set(each.test, each);
    else if (order === 0 && known && String(known.answer) !== String(each.answer)) {
      newest.set(each.test, { ...each, answer: UNSURE });
      disagree = true;
    }
  }
  const answers: Record<string, FactValue> = {};
  for (const [test, each] of newest) answers[test] = each.answer;
  return { answers, doubt: disagree ? { "state.observers_disagree": true } : {} };
}

function siteFacts(place: Place): Facts {
  return {
    "site.climate": place.climate,
    "site.freezer": place.freezer,
    "site.hepa_vacuum": place.fineFilterVacuum,
  };
}

function stateFacts(done: ReadonlySet<Act>): Facts {
  const yesNo = (act: Act): string => (done.has(act) ? "yes" : "no");
  return {
    "state.dry_verified": yesNo("release"),
    "state.covers_imaged": yesNo("covers"),
    "state.wrapped": yesNo("wrap"),
    "state.cleaned": yesNo("clean"),
  };
}

function named(group: string, values: Facts): Facts {
  return Object.fromEntries(Object.entries(values).map(([name, value]) => [`${group}.${name}`, value]));
}

function grouped<T>(rows: readonly T[], key: (row: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) {
    const group = groups.get(key(row));
    if (group) group.push(row);
    else groups.set(key(row), [row]);
  }
  return groups;
}
