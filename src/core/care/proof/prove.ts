import type { Facts, FactValue } from "../../items/facts.ts";
import { guards } from "../check-rules.ts";
import type { Rule, RuleBook } from "../rule-book.ts";
import { Circuit, FALSE, type Literal, type Sat } from "./circuit.ts";
import { bannable, CLAIMS } from "./claims.ts";
import { careOfWorld, type SymbolicCare } from "./symbolic.ts";
import { FactSpaces, World } from "./world.ts";

/** One claim tried over every set of facts. */
export interface Verdict {
  readonly id: string;
  readonly says: string;
  readonly holds: boolean;
  /** Questions put to the solver for it. */
  readonly questions: number;
  /** An item that breaks it, with no more facts than it needs. */
  readonly counterExample: Facts | null;
  /** What differs there: an action, a test and its answer, rules. */
  readonly about: string;
}

export interface Proof {
  readonly verdicts: readonly Verdict[];
  /** Facts the rules tell apart, and how many sets of facts there are, as a power of ten. */
  readonly facts: number;
  readonly spaceDigits: number;
  readonly variables: number;
}

/** Proves the safety claims of a rule book over the whole space of facts; nothing is sampled. */
export function prove(book: RuleBook, sat: Sat): Proof {
  const circuit = new Circuit(sat);
  const spaces = new FactSpaces(circuit, book);
  const care = careOfWorld(circuit, book, new World(circuit, spaces));
  const prover: Prover = { book, sat, circuit, spaces, care, solves: { count: 0 } };
  const verdicts = [
    ...CLAIMS.map((claim) =>
      verdict(prover, claim.id, claim.says, [
        { literal: claim.broken(care, circuit, book), about: () => "" },
      ]),
    ),
    unsureNeverMilder(prover),
    untestedNeverMilder(prover),
    nothingDropsSilently(prover),
    everyRuleCanFire(prover),
    noUndeclaredClash(prover),
    noOrderCircle(prover),
  ];
  return {
    verdicts,
    facts: spaces.spaces.size,
    spaceDigits: spaces.decimalDigits,
    variables: circuit.variables,
  };
}

interface Prover {
  readonly book: RuleBook;
  readonly sat: Sat;
  readonly circuit: Circuit;
  readonly spaces: FactSpaces;
  readonly care: SymbolicCare;
  readonly solves: { count: number };
}

interface Broken {
  readonly literal: Literal;
  /** What differs, said after an item that breaks the claim was found. */
  readonly about: () => string;
}

/** Holds when none of the literals can be true; otherwise the first that can, with a small item. */
function verdict(prover: Prover, id: string, says: string, broken: readonly Broken[]): Verdict {
  const { sat, solves } = prover;
  let questions = 0;
  for (const { literal, about } of broken) {
    if (literal === FALSE) continue;
    questions += 1;
    solves.count += 1;
    if (!sat.solve([literal])) continue;
    const counterExample = smallest(prover, literal);
    return { id, says, holds: false, questions, counterExample, about: about() };
  }
  return { id, says, holds: true, questions, counterExample: null, about: "" };
}

/** Takes one fact after another away while the claim stays broken. */
function smallest({ sat, spaces, care, circuit }: Prover, literal: Literal): Facts {
  const assumed = [literal];
  for (const fact of spaces.spaces.keys()) {
    const without = [...assumed, care.world.absent(fact)];
    if (sat.solve(without)) assumed.push(care.world.absent(fact));
  }
  sat.solve(assumed);
  return new World(circuit, spaces).factsIn(sat.value);
}

/** The world with one fact fixed. */
const fixedTo = (prover: Prover, fact: string, value: FactValue | null): SymbolicCare =>
  careOfWorld(prover.circuit, prover.book, new World(prover.circuit, prover.spaces, { [fact]: value }));

/** Guards of a care, each by name: bans, holds, whom to ask, protection of people. */
function guardsOf(book: RuleBook, care: SymbolicCare): Map<string, Literal> {
  const found = new Map<string, Literal>([["held or as found", care.untouched]]);
  for (const action of bannable(book))
    if (!book.freeing.has(action)) found.set(`ban of ${action}`, care.banned(action));
  for (const rule of book.rules)
    for (const each of rule.consequences) {
      if (each.verb === "escalate") found.set(each.action, care.escalated(each.action));
      if (each.verb === "require" && rule.reason.tier === 1 && guards(book, each))
        found.set(`protection ${each.action}`, care.protects(each.action));
    }
  return found;
}

/** Guards there are in the strict care and not in the mild one. */
function lostGuards(prover: Prover, strict: SymbolicCare, mild: SymbolicCare, words: string): Broken {
  const { circuit, book, sat } = prover;
  const other = guardsOf(book, mild);
  const lost = [...guardsOf(book, strict)].map(
    ([name, there]) => [name, circuit.without(there, other.get(name) ?? FALSE)] as const,
  );
  const isTrue = (literal: Literal): boolean => (literal < 0 ? !sat.value(-literal) : sat.value(literal));
  return {
    literal: circuit.or(...lost.map(([, literal]) => literal)),
    about: () =>
      `${words} loses: ${lost.flatMap(([name, literal]) => (isTrue(literal) ? name : [])).join(", ")}`,
  };
}

const testsOf = ({ spaces }: Prover): string[] =>
  [...spaces.spaces.keys()].filter((fact) => fact.startsWith("obs."));

const answersTo = ({ spaces }: Prover, fact: string): FactValue[] =>
  (spaces.spaces.get(fact)?.options ?? []).flatMap(({ value }) =>
    value === null || value === "unsure" ? [] : [value],
  );

function unsureNeverMilder(prover: Prover): Verdict {
  const broken = testsOf(prover).flatMap((fact) => {
    const unsure = fixedTo(prover, fact, "unsure");
    return answersTo(prover, fact).map((value) =>
      lostGuards(prover, fixedTo(prover, fact, value), unsure, `${fact} = unsure instead of ${value}`),
    );
  });
  return verdict(
    prover,
    "unsure-never-milder",
    "Unsure never comes out milder than any answer would: every ban, hold, person to ask and protection stays.",
    broken,
  );
}

/** The mildest answer to a test is the one a sound item gives. */
const MILDEST = ["no", "none", "safety", "cut"];

function untestedNeverMilder(prover: Prover): Verdict {
  const broken = testsOf(prover).flatMap((fact) => {
    const mildest = answersTo(prover, fact).filter((value) => MILDEST.includes(String(value)));
    const untested = fixedTo(prover, fact, null);
    return mildest.map((value) =>
      lostGuards(prover, fixedTo(prover, fact, value), untested, `${fact} not tested instead of ${value}`),
    );
  });
  return verdict(
    prover,
    "untested-never-milder",
    "Not tested never comes out milder than the answer a sound item gives.",
    broken,
  );
}

/** Hazards an answer may take away again, and by which answer: everything else must stay once it is found. */
const CLEARING: Readonly<Record<string, readonly string[]>> = {
  "obs.bloom_melts_warm": ["yes"],
  "obs.growth_visible": ["no"],
  "obs.growth_smears": ["no"],
  "obs.fresh_frass": ["no"],
  "obs.film_edge_mark": ["safety"],
};

function nothingDropsSilently(prover: Prover): Verdict {
  const hazards = prover.book.derivations
    .map((each) => each.condition)
    .filter((each) =>
      /^mould|insect|rodent|guano|pesticide|arsenic|lead|nitrate|acetate|flaking|image_layer|red_rot|wet|damp/.test(
        each,
      ),
    );
  const { circuit } = prover;
  const broken = testsOf(prover).flatMap((fact) => {
    const before = fixedTo(prover, fact, null);
    return ["unsure", ...answersTo(prover, fact)]
      .filter((value) => !CLEARING[fact]?.includes(String(value)))
      .map((value) => {
        const after = fixedTo(prover, fact, value);
        const grows = (care: SymbolicCare): Literal =>
          circuit.or(
            ...hazards.filter((each) => each.startsWith("mould")).map((each) => care.condition(each).maybe),
          );
        const insects = (care: SymbolicCare): Literal =>
          circuit.or(
            ...hazards.filter((each) => each.startsWith("insect")).map((each) => care.condition(each).maybe),
          );
        return {
          literal: circuit.or(
            circuit.without(grows(before), grows(after)),
            circuit.without(insects(before), insects(after)),
            ...hazards
              .filter((each) => !/^(mould|insect)/.test(each) && each !== "water_sensitive")
              .map((each) => circuit.without(before.condition(each).maybe, after.condition(each).maybe)),
          ),
          about: () => `${fact} = ${value}`,
        };
      });
  });
  return verdict(
    prover,
    "no-hazard-dropped",
    "Answering one more test takes no hazard away, save by the answers declared to clear it.",
    broken,
  );
}

function everyRuleCanFire(prover: Prover): Verdict {
  const { book, care, sat, solves } = prover;
  const dead = book.rules.filter((rule) => {
    solves.count += 1;
    return !sat.solve([care.holds(rule).yes]);
  });
  return {
    id: "every-rule-can-hold",
    says: "Every rule holds for some item.",
    holds: dead.length === 0,
    questions: book.rules.length,
    counterExample: null,
    about: dead.map((rule) => rule.id).join(", "),
  };
}

/** A command and a ban of one tier on one action that can meet: which wins must follow from the tier, never from chance. */
function noUndeclaredClash(prover: Prover): Verdict {
  const { book, care, circuit } = prover;
  const commands = pairsOf(book, "require").filter(
    ({ consequence }) => !consequence.before && !consequence.after,
  );
  const bans = pairsOf(book, "forbid");
  const broken = commands.flatMap((command) =>
    bans
      .filter(
        (ban) =>
          ban.rule.reason.tier === command.rule.reason.tier &&
          (ban.consequence.action === command.consequence.action ||
            (book.families.get(ban.consequence.action) ?? []).includes(command.consequence.action)),
      )
      .map((ban) => ({
        literal: circuit.and(care.fires(ban.rule), care.fires(command.rule)),
        about: () => `${command.rule.id} requires and ${ban.rule.id} forbids ${command.consequence.action}`,
      })),
  );
  return verdict(
    prover,
    "no-undeclared-clash",
    "No two rules of one tier command and forbid the same act at once; an act that must wait is asked for as an order.",
    broken,
  );
}

const pairsOf = (book: RuleBook, verb: string) =>
  book.rules.flatMap((rule) =>
    rule.consequences
      .filter((consequence) => consequence.verb === verb)
      .map((consequence) => ({ rule, consequence })),
  );

function noOrderCircle(prover: Prover): Verdict {
  const { circuit, care, book } = prover;
  const edges = book.rules.flatMap((rule) =>
    rule.consequences.flatMap(({ verb, action, before, after }) => {
      if (verb === "forbid" || (!before && !after)) return [];
      return [{ rule, from: before ? action : (after as string), to: before ?? action }];
    }),
  );
  type Edge = (typeof edges)[number];
  const broken: Broken[] = [];
  const walk = (path: readonly Edge[]): void => {
    const [first] = path;
    const last = path.at(-1);
    if (!first || !last || path.length > edges.length) return;
    if (last.to === first.from) {
      broken.push({
        literal: circuit.and(...path.map((edge) => care.fires(edge.rule))),
        about: () => path.map((edge) => `${edge.from} before ${edge.to} (${edge.rule.id})`).join(", "),
      });
      return;
    }
    for (const edge of edges)
      if (edge.from === last.to && !path.some((each) => each.from === edge.from)) walk([...path, edge]);
  };
  for (const edge of edges) walk([edge]);
  return verdict(prover, "no-order-circle", "No set of rules asks for acts in a circle.", broken);
}

/** Rules that surely hold for some item, or null with the first that never does; used where a campaign adds its own. */
export const neverHolding = (book: RuleBook, sat: Sat, rules: readonly Rule[]): Rule[] => {
  const circuit = new Circuit(sat);
  const care = careOfWorld(circuit, book, new World(circuit, new FactSpaces(circuit, book)));
  return rules.filter((rule) => !sat.solve([care.holds(rule).yes]));
};
