import type { Problem } from "../outcome/problem.ts";
import { done, type Outcome, refused } from "../outcome/problem.ts";
import type { Reason, Tier, Until, Verb } from "./care.ts";
import { type Condition, compile, factsOf, type Lookup, OPS, type Truth } from "./truth.ts";

export interface Consequence {
  readonly verb: Verb;
  readonly action: string;
  readonly until: Until;
  readonly before?: string;
  readonly after?: string;
  readonly details: Readonly<Record<string, unknown>>;
}

export interface Rule {
  readonly id: string;
  readonly holds: (facts: Lookup) => Truth;
  readonly reads: readonly string[];
  /** `fire`: an unsure counts as yes; `hold`: the rule waits. */
  readonly unsure: "fire" | "hold";
  readonly consequences: readonly Consequence[];
  readonly reason: Omit<Reason, "because" | "fromUnsure">;
}

export interface Derivation {
  readonly condition: string;
  readonly holds: (facts: Lookup) => Truth;
  readonly reads: readonly string[];
}

/** The rules ready to run: conditions in an order in which each is derived before it is read. */
export interface RuleBook {
  readonly derivations: readonly Derivation[];
  readonly rules: readonly Rule[];
  /** Family name → its members, the family itself not among them. */
  readonly families: ReadonlyMap<string, readonly string[]>;
  readonly requiredTests: Readonly<Record<string, readonly string[]>>;
  readonly endings: Readonly<Record<string, string>>;
}

/** The published tables, as parsed JSON of whatever shape. */
export interface RuleTables {
  readonly derivations: unknown;
  readonly rules: unknown;
  readonly actions: unknown;
  readonly endings: unknown;
  readonly vocabulary: unknown;
  readonly sources: unknown;
}

type Raw = Record<string, unknown>;
const record = (value: unknown): Raw => (typeof value === "object" && value !== null ? (value as Raw) : {});
const list = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);

/** Reads and checks the rule tables; every fault is named, with the rule it stands in. */
export function loadRuleBook(tables: RuleTables): Outcome<RuleBook> {
  const problems: Problem[] = [];
  const fault = (where: string, got: unknown, expected: string): void => {
    problems.push({
      code: "rule-fault",
      severity: "stop",
      file: "data/rules",
      column: where,
      got: String(got),
      expected,
      remedy: `Correct ${where} in the rule tables.`,
    });
  };
  const actions = record(record(tables.actions).actions);
  const endings = record(tables.endings) as Record<string, string>;
  const sources = record(tables.sources);
  const rules = list(tables.rules).map((raw) => readRule(record(raw), { actions, endings, sources, fault }));
  repeated(rules.map((rule) => rule.id)).forEach((id) => {
    fault(id, id, "an id used once");
  });
  const derivations = inOrder(
    list(tables.derivations).map((raw) => readDerivation(record(raw), fault)),
    fault,
  );
  if (problems.length > 0) return refused(...problems);
  const vocabulary = record(tables.vocabulary);
  return done({
    derivations,
    rules,
    families: familiesOf(record(record(tables.actions).families), Object.keys(actions)),
    requiredTests: record(vocabulary.requiredTests) as Record<string, string[]>,
    endings,
  });
}

type Fault = (where: string, got: unknown, expected: string) => void;
interface Known {
  readonly actions: Raw;
  readonly endings: Raw;
  readonly sources: Raw;
  readonly fault: Fault;
}

function readRule(raw: Raw, known: Known): Rule {
  const id = String(raw.id);
  const when = readCondition(raw.when, id, known.fault);
  if (![1, 2, 3, 4].includes(Number(raw.tier))) known.fault(id, raw.tier, "tier 1, 2, 3 or 4");
  if (raw.unsure !== "fire" && raw.unsure !== "hold") known.fault(id, raw.unsure, "unsure: fire or hold");
  const source = record(known.sources[String(raw.source)]);
  if (!source.what) known.fault(id, raw.source, "a source of data/sources.json");
  return {
    id,
    holds: compile(when),
    reads: [...new Set(factsOf(when))],
    unsure: raw.unsure === "fire" ? "fire" : "hold",
    consequences: list(raw.then).map((each) => readConsequence(record(each), id, known)),
    reason: {
      rule: id,
      tier: Number(raw.tier) as Tier,
      text: String(raw.text),
      why: String(raw.why),
      source: String(source.what),
      sourceStatus: String(raw.sourceStatus),
    },
  };
}

function readConsequence(raw: Raw, id: string, known: Known): Consequence {
  const { verb, action, before, after, ends, ...details } = raw;
  const allowed = list(record(known.actions[String(action)]).verbs);
  if (!allowed.includes(verb))
    known.fault(id, `${verb} ${action}`, "an action of data/actions.json with that verb");
  const until = String(ends ?? "never");
  if (verb === "forbid" && !(until in known.endings))
    known.fault(id, until, "an ending of data/endings.json");
  return {
    verb: verb as Verb,
    action: String(action),
    until,
    ...(before === undefined ? {} : { before: String(before) }),
    ...(after === undefined ? {} : { after: String(after) }),
    details,
  };
}

function readDerivation(raw: Raw, fault: Fault): Derivation {
  const when = readCondition(raw.when, String(raw.id), fault);
  return { condition: String(raw.condition), holds: compile(when), reads: [...new Set(factsOf(when))] };
}

function readCondition(value: unknown, where: string, fault: Fault): Condition {
  const raw = record(value);
  if (Array.isArray(raw.all)) return { all: raw.all.map((each) => readCondition(each, where, fault)) };
  if (Array.isArray(raw.any)) return { any: raw.any.map((each) => readCondition(each, where, fault)) };
  if (raw.not !== undefined) return { not: readCondition(raw.not, where, fault) };
  if (typeof raw.f !== "string" || !OPS.includes(raw.op as never) || raw.v === undefined)
    fault(where, JSON.stringify(value), "all, any, not, or { f, op, v }");
  return raw as unknown as Condition;
}

/** Conditions that read other conditions come after them; a circle is named. */
function inOrder(derivations: Derivation[], fault: Fault): Derivation[] {
  const sorted: Derivation[] = [];
  const state = new Map<Derivation, "open" | "done">();
  const visit = (each: Derivation): void => {
    if (state.get(each) === "done") return;
    if (state.get(each) === "open") {
      fault(each.condition, each.condition, "conditions that do not read each other in a circle");
      return;
    }
    state.set(each, "open");
    for (const other of derivations)
      if (other !== each && each.reads.includes(`cond.${other.condition}`)) visit(other);
    state.set(each, "done");
    sorted.push(each);
  };
  derivations.forEach(visit);
  return sorted;
}

/** A family forbids every member; families may hold families. A family without a list of members grows by name. */
function familiesOf(raw: Raw, actions: readonly string[]): Map<string, readonly string[]> {
  const direct = new Map<string, string[]>();
  const byPrefix = (prefix: string, family: string): string[] =>
    actions.filter((action) => action.startsWith(prefix) && action !== family);
  for (const [family, members] of Object.entries(raw)) {
    if (Array.isArray(members)) direct.set(family, members.map(String));
    else direct.set(family, byPrefix(family, family));
  }
  return direct;
}

const repeated = (ids: readonly string[]): string[] => ids.filter((id, at) => ids.indexOf(id) !== at);
