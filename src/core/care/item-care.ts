import type { Act, Campaign, Finding, Item, Place } from "../items/campaign.ts";
import { type Facts, type FactValue, UNSURE } from "../items/facts.ts";
import type { Care } from "./care.ts";
import { decideParts } from "./decide.ts";
import { evaluate } from "./evaluate.ts";
import type { RuleBook } from "./rule-book.ts";

/** The care of one part; the body of the item has no name. */
export interface PartCare {
  readonly name: string;
  readonly leaves: number | null;
  readonly care: Care;
}

/** The care of one item: of its body, and of each part with materials of its own. */
export interface ItemCare {
  readonly item: Item;
  /** Of the body as it stands now, what reaches the whole item from its parts among it. */
  readonly whole: Care;
  readonly parts: readonly PartCare[];
  /** Body first, then the parts, once the acts given are done and, if said, no must-ask test is open: what a later step is decided by. */
  readonly at: (done: ReadonlySet<Act>, testsAnswered?: boolean) => readonly PartCare[];
  /** Whether the place has a fine-filter vacuum. */
  readonly fineFilterVacuum: boolean;
  readonly done: ReadonlySet<Act>;
  /** Answers for the whole item, by test. */
  readonly answers: Readonly<Record<string, FactValue>>;
}

/** Care for every item of a campaign. Items with the same facts share one decision. */
export function careOfCampaign(book: RuleBook, campaign: Campaign): ItemCare[] {
  const findings = grouped(campaign.findings, (each) => each.item);
  const sessions = grouped(campaign.sessions, (each) => each.item);
  const decided = new Map<string, readonly PartCare[]>();
  const decideOnce: DecideOnce = (key, parts, state) => {
    const known = decided.get(key) ?? careOfParts(book, parts, state);
    decided.set(key, known);
    return known;
  };
  return campaign.items.map((item) => {
    const done = new Set((sessions.get(item.id) ?? []).map((session) => session.act));
    return careOfItem(decideOnce, item, findings.get(item.id) ?? [], campaign.place, done);
  });
}

/** Tests that find living insects; an item that had them leaves the Ward when they are dead or the watch is over. */
const INSECTS: ReadonlySet<string> = new Set(["live_insects", "fresh_frass"]);

type DecideOnce = (key: string, parts: readonly PartFacts[], state: Facts) => readonly PartCare[];

function careOfParts(book: RuleBook, parts: readonly PartFacts[], state: Facts): PartCare[] {
  const care = decideParts(
    book,
    parts.map((part) => evaluate(book, { ...part.facts, ...state })),
  );
  return parts.map(({ name, leaves }, index) => ({ name, leaves, care: care[index] as Care }));
}

interface PartFacts {
  readonly name: string;
  readonly leaves: number | null;
  readonly facts: Facts;
}

function careOfItem(
  decideOnce: DecideOnce,
  item: Item,
  findings: readonly Finding[],
  place: Place,
  done: ReadonlySet<Act>,
): ItemCare {
  const body = answersOf(findings.filter((each) => each.part === ""));
  const parts = partsOf(item, findings, place, body);
  const key = JSON.stringify(parts);
  const infested = findings.some(({ test, answer }) => INSECTS.has(test) && answer !== "no");
  const at = (acts: ReadonlySet<Act>, testsAnswered = false): readonly PartCare[] => {
    const state = {
      ...(acts.has("release") ? {} : named("state", item.state ?? {})),
      ...stateFacts(acts),
      ...(infested ? { "state.insects_killed": acts.has("release") ? "yes" : "no" } : {}),
      ...(testsAnswered ? { "state.required_tests_missing": "no" } : {}),
    };
    return decideOnce(key + Object.values(state).join(), parts, state);
  };
  const [whole, ...others] = at(done);
  return {
    item,
    whole: (whole as PartCare).care,
    parts: others,
    at,
    fineFilterVacuum: place.fineFilterVacuum,
    done,
    answers: body.answers,
  };
}

interface Answers {
  readonly answers: Record<string, FactValue>;
  readonly doubt: Facts;
}

/** What is known of the body and of each part, whatever was done so far. A part has the body's answers where it has none of its own. */
function partsOf(item: Item, findings: readonly Finding[], place: Place, body: Answers): PartFacts[] {
  const around = {
    ...siteFacts(place),
    "plan.step": ["clean", "image", "rehouse"],
    ...(findings.length === 0 ? { "item.new_arrival": "yes" } : {}),
    ...(item.custodianRule ? { "item.custodian_rule": item.custodianRule } : {}),
  };
  const part = (name: string, properties: Facts, answers: Facts, doubt: Facts): PartFacts => {
    const facts = {
      ...around,
      ...named("item", { media: ["unknown"], ...properties }),
      ...named("obs", answers),
      ...doubt,
    };
    const leaves = typeof properties.leaves === "number" ? properties.leaves : null;
    return { name, leaves, facts };
  };
  return [
    part("", item.facts, body.answers, body.doubt),
    ...item.parts.map((each) => {
      const own = answersOf(findings.filter((finding) => finding.part === each.name));
      const answers = { ...body.answers, ...own.answers };
      return part(each.name, { ...item.facts, leaves: 1, ...each.facts }, answers, {
        ...body.doubt,
        ...own.doubt,
      });
    }),
  ];
}

/** The newest answer to each test stands; two that differ on one day are a disagreement: unsure, until a third look (N02). */
function answersOf(findings: readonly Finding[]): Answers {
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

/** What the acts done so far say about the state of an item. */
export function stateFacts(done: ReadonlySet<Act>): Facts {
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
