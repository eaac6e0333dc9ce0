import type { FactValue } from "../items/facts.ts";
import { done, type Outcome, type Problem, refused } from "../outcome/problem.ts";
import { faultsOfBook } from "./check-rules.ts";
import type { Tier, Verb } from "./reason.ts";
import type {
  Consequence,
  Derivation,
  FactKind,
  Grading,
  Rest,
  Rule,
  RuleBook,
  RuleExample,
  RuleTables,
  Test,
} from "./rule-book.ts";
import { membersOf } from "./settle.ts";
import { type Condition, compile, factsOf, OPS } from "./truth.ts";

/** A fault in a table: where it stands, what was found, what would be right. */
export type Fault = (where: string, got: unknown, expected: string) => void;

/** The rules of a campaign folder. */
export interface LocalRules {
  readonly file: string;
  readonly rules: unknown;
}

/**
 * Reads and checks the rule tables, and the campaign's own rules where it has some. Every fault is named with the rule it stands in:
 * unknown words, values that can never occur, circles, conditions nobody uses, missing or disagreeing examples, a local rule that would weaken.
 */
export function loadRuleBook(tables: RuleTables, local?: LocalRules): Outcome<RuleBook> {
  const problems: Problem[] = [];
  const faultIn =
    (file: string): Fault =>
    (where, got, expected) => {
      problems.push({
        code: "rule-fault",
        severity: "stop",
        file,
        rule: where,
        got: String(got),
        expected,
        remedy: `Correct ${where} in ${file}.`,
      });
    };
  const actions = record(record(tables.actions).actions);
  const facts = factKinds(tables);
  const places = new Map([...facts.keys()].map((fact, at) => [fact, at]));
  const known: Known = {
    actions,
    endings: record(tables.endings) as Record<string, string>,
    sources: record(tables.sources),
    place: (fact) => places.get(fact) ?? 0,
    facts,
    families: familiesOf(record(record(tables.actions).families), Object.keys(actions)),
  };
  const rules: Rule[] = [];
  for (const [theme, file] of Object.entries(tables.rules))
    for (const raw of list(file))
      rules.push(
        readRule(record(raw), theme, rules.length, { ...known, fault: faultIn(`data/rules/${theme}.json`) }),
      );
  if (local) {
    const fault = faultIn(local.file);
    if (!Array.isArray(local.rules)) fault("the file", typeof local.rules, "a list of rules");
    for (const raw of list(local.rules))
      rules.push(readRule(record(raw), "local", rules.length, { ...known, fault }));
  }
  const fault = faultIn("data");
  const derivations = inOrder(
    list(tables.derivations).map((raw) => readDerivation(record(raw), { ...known, fault })),
    fault,
  );
  const vocabulary = record(tables.vocabulary);
  const book: RuleBook = {
    derivations,
    rules,
    rests: list(tables.rests).map((raw) => readRest(record(raw), { ...known, fault })),
    gradings: list(tables.severities).map((raw) => readGrading(record(raw), { ...known, fault })),
    families: known.families,
    freeing: new Set(Object.keys(actions).filter((action) => record(actions[action]).frees === true)),
    requiredTests: record(vocabulary.requiredTests) as Record<string, string[]>,
    endings: known.endings,
    facts,
    tests: testsOf(record(vocabulary.tests)),
    severities: severitiesOf(record(vocabulary.conditions)),
    places,
  };
  faultsOfBook(book, (file, where, got, expected) => {
    faultIn(file === "local" ? (local?.file ?? "rules.json") : file)(where, got, expected);
  });
  return problems.length > 0 ? refused(...problems) : done(book);
}

type Raw = Record<string, unknown>;
const record = (value: unknown): Raw =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Raw) : {};
const list = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);

interface Known {
  readonly actions: Raw;
  readonly endings: Readonly<Record<string, string>>;
  readonly sources: Raw;
  readonly place: (fact: string) => number;
  readonly facts: ReadonlyMap<string, FactKind>;
  readonly families: ReadonlyMap<string, readonly string[]>;
}
type Reading = Known & { readonly fault: Fault };

/** Every fact a rule may read: recorded properties, tests (`obs.…`) and derived conditions (`cond.…`). */
function factKinds(tables: RuleTables): Map<string, FactKind> {
  const vocabulary = record(tables.vocabulary);
  const kinds = new Map<string, FactKind>();
  const wordsOf = (values: unknown): string[] =>
    typeof values === "string"
      ? Array.isArray(vocabulary[values])
        ? list(vocabulary[values]).map(String)
        : Object.keys(record(vocabulary[values]))
      : list(values).map(String);
  for (const [name, raw] of Object.entries(record(tables.facts))) {
    const { type, says, unit, values } = record(raw);
    kinds.set(name, {
      type: type as FactKind["type"],
      says: String(says),
      unit: String(unit ?? ""),
      values: type === "yesNo" ? ["yes", "no"] : wordsOf(values),
    });
  }
  for (const [name, raw] of Object.entries(record(vocabulary.tests))) {
    const { short, answers } = record(raw);
    const [type, values, unit] = answerKind(String(answers));
    kinds.set(`obs.${name}`, { type, says: String(short), unit, values });
  }
  for (const raw of list(tables.derivations)) {
    const name = String(record(raw).condition);
    kinds.set(`cond.${name}`, {
      type: "yesNo",
      says: name.replaceAll("_", " "),
      unit: "",
      values: ["yes", "no"],
    });
  }
  return kinds;
}

/** `yes/no/unsure`, `none/trace/clear/heavy`, `number % RH`, `degrees`, `0-3`. */
function answerKind(answers: string): [FactKind["type"], string[], string] {
  if (answers.startsWith("yes/no")) return ["yesNo", ["yes", "no"], ""];
  if (answers.includes("/")) return ["choice", answers.split("/").filter((each) => each !== "unsure"), ""];
  return ["number", [], answers.replace(/^number /, "").replace("0-3", "")];
}

function testsOf(raw: Raw): Map<string, Test> {
  return new Map(
    Object.entries(raw).map(([id, value]) => {
      const { short, question, how, answers, who, note, by, minutes, waitHours, stop, formats } =
        record(value);
      return [
        id,
        {
          id,
          short: String(short),
          question: String(question),
          how: String(how),
          answers: String(answers),
          who: String(who),
          note: String(note),
          by: String(by),
          minutes: Number(minutes),
          waitHours: Number(waitHours ?? 0),
          stop: stop === true,
          formats: list(formats).map(String),
        },
      ];
    }),
  );
}

const severitiesOf = (raw: Raw): Record<string, string[]> =>
  Object.fromEntries(
    Object.entries(raw).map(([condition, value]) => [
      condition,
      list(record(value).severity0to4).map(String),
    ]),
  );

function readRule(raw: Raw, theme: string, at: number, known: Reading): Rule {
  const id = String(raw.id);
  const when = readCondition(raw.when, id, known);
  if (![1, 2, 3, 4].includes(Number(raw.tier))) known.fault(id, raw.tier, "tier 1, 2, 3 or 4");
  if (raw.unsure !== "fire" && raw.unsure !== "hold") known.fault(id, raw.unsure, "unsure: fire or hold");
  if (list(raw.then).length === 0) known.fault(id, "nothing", "at least one consequence under `then`");
  return {
    id,
    at,
    theme,
    when,
    holds: compile(when, known.place),
    reads: factsOf(when),
    unsure: raw.unsure === "hold" ? "hold" : "fire",
    consequences: list(raw.then).map((each) => readConsequence(record(each), id, known)),
    reason: {
      rule: id,
      tier: Number(raw.tier) as Tier,
      text: String(raw.text),
      why: String(raw.why),
      source: sourceOf(raw, id, theme, known),
      sourceStatus: String(raw.sourceStatus ?? (theme === "local" ? "local rule" : "")),
    },
    examples: list(raw.examples).map((each) => record(each) as unknown as RuleExample),
    local: theme === "local",
  };
}

/** A published rule names a source of data/sources.json; a local one may say in its own words who asked for it. */
function sourceOf(raw: Raw, id: string, theme: string, known: Reading): string {
  const listed = record(known.sources[String(raw.source)]).what;
  if (listed) return String(listed);
  if (theme === "local" && typeof raw.source === "string" && raw.source.trim() !== "") return raw.source;
  known.fault(
    id,
    raw.source,
    theme === "local" ? "a source: who asked for it" : "a source of data/sources.json",
  );
  return "";
}

function readConsequence(raw: Raw, id: string, known: Reading): Consequence {
  const { verb, action, before, after, ends, ...details } = raw;
  const kind = record(known.actions[String(action)]);
  if (!list(kind.verbs).includes(verb))
    known.fault(id, `${verb} ${action}`, "an action of data/actions.json with that verb");
  const until = String(ends ?? "never");
  if (verb === "forbid" && (ends === undefined || !(until in known.endings)))
    known.fault(
      id,
      `ban of ${action} that ends: ${ends}`,
      "`ends` with never, or an ending of data/endings.json",
    );
  return {
    verb: verb as Verb,
    action: String(action),
    until,
    ...(before === undefined ? {} : { before: String(before) }),
    ...(after === undefined ? {} : { after: String(after) }),
    details,
    reach: kind.reach === "part" ? "part" : "item",
    members: [...membersOf(known.families, String(action))],
  };
}

function readDerivation(raw: Raw, known: Reading): Derivation {
  const id = String(raw.id);
  const when = readCondition(raw.when, id, known);
  return {
    id,
    condition: String(raw.condition),
    when,
    holds: compile(when, known.place),
    reads: factsOf(when),
    note: String(raw.note ?? ""),
    source: String(record(known.sources[String(raw.source)]).what ?? raw.source),
    sourceStatus: String(record(known.sources[String(raw.source)]).status ?? ""),
  };
}

function readGrading(raw: Raw, known: Reading): Grading {
  const condition = String(raw.condition);
  return {
    condition,
    grades: list(raw.grades).map((each) => {
      const { severity, when: wanted } = record(each);
      if (![0, 1, 2, 3, 4].includes(Number(severity)))
        known.fault(condition, severity, "a severity from 0 to 4");
      const when = readCondition(wanted, condition, known);
      return { severity: Number(severity) as 0 | 1 | 2 | 3 | 4, when, holds: compile(when, known.place) };
    }),
  };
}

function readRest(raw: Raw, known: Reading): Rest {
  const id = String(raw.id);
  const when = readCondition(raw.when, id, known);
  const acts = list(raw.acts).map(String);
  for (const act of acts) if (!(act in known.actions)) known.fault(id, act, "an action of data/actions.json");
  return { id, says: String(raw.says), when, holds: compile(when, known.place), acts };
}

function readCondition(value: unknown, where: string, known: Reading): Condition {
  const raw = record(value);
  if (Array.isArray(raw.all)) return { all: raw.all.map((each) => readCondition(each, where, known)) };
  if (Array.isArray(raw.any)) return { any: raw.any.map((each) => readCondition(each, where, known)) };
  if (raw.not !== undefined) return { not: readCondition(raw.not, where, known) };
  const { f, op, v } = raw;
  if (typeof f !== "string" || !OPS.includes(op as never) || v === undefined) {
    known.fault(where, JSON.stringify(value), "all, any, not, or { f, op, v }");
    return { any: [] };
  }
  checkValues(f, v, where, known);
  return { f, op, v } as Condition;
}

/** A value the fact can never have would make the condition never hold: it is named. */
function checkValues(fact: string, wanted: unknown, where: string, known: Reading): void {
  const kind = known.facts.get(fact);
  if (!kind) {
    known.fault(where, fact, "a fact of data/facts.json, a test (obs.…) or a condition (cond.…)");
    return;
  }
  if (kind.type === "text") return;
  for (const each of (Array.isArray(wanted) ? wanted : [wanted]) as FactValue[]) {
    const word = each === true ? "yes" : each === false ? "no" : each;
    if (kind.type === "number" ? typeof each !== "number" : !allowed(kind, String(word)))
      known.fault(
        where,
        `${fact} = ${each}`,
        kind.type === "number" ? `a number (${kind.unit})` : `one of ${kind.values.join(", ")}`,
      );
  }
}

const allowed = (kind: FactKind, word: string): boolean =>
  kind.values.includes(word) || word === "unsure" || word === "unknown";

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
  const byPrefix = (family: string): string[] =>
    actions.filter((action) => action.startsWith(family) && action !== family);
  return new Map(
    Object.entries(raw).map(([family, members]) => [
      family,
      Array.isArray(members) ? members.map(String) : byPrefix(family),
    ]),
  );
}
