import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { decide } from "../../../src/core/care/decide.ts";
import { Circuit, type Literal, type Sat } from "../../../src/core/care/proof/circuit.ts";
import { bannable } from "../../../src/core/care/proof/claims.ts";
import { careOfWorld, type SymbolicCare } from "../../../src/core/care/proof/symbolic.ts";
import { FactSpaces, World } from "../../../src/core/care/proof/world.ts";
import type { Facts } from "../../../src/core/items/facts.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";
import { startSat } from "../../../src/edge/solve/sat.ts";

const book = publishedRuleBook();
let sat: Sat & { close: () => void };
let spaces: FactSpaces;
let care: SymbolicCare;
let literals: ReturnType<typeof literalsOf>;
beforeAll(async () => {
  sat = await startSat();
  const circuit = new Circuit(sat);
  spaces = new FactSpaces(circuit, book);
  care = careOfWorld(circuit, book, new World(circuit, spaces));
  literals = literalsOf(care);
});
afterAll(() => sat.close());

const isTrue = (literal: Literal): boolean => (literal < 0 ? !sat.value(-literal) : sat.value(literal));

/** Any set of facts, few or many of them known, with the format more often than not. */
const anyItem = fc
  .record({ seed: fc.infiniteStream(fc.nat({ max: 1_000_000 })), known: fc.integer({ min: 1, max: 9 }) })
  .map(({ seed, known }) => (assumed: FactSpaces) => {
    const next = (): number => seed.next().value as number;
    return [...assumed.spaces.values()].flatMap(({ options, members, fact }) => {
      const open = fact !== "item.format" && next() % 10 >= known;
      if (members.length > 0) return members.map(({ holds }) => (!open && next() % 3 === 0 ? holds : -holds));
      const chosen = open ? options.findIndex(({ value }) => value === null) : next() % options.length;
      return options.map(({ holds }, at) => (at === chosen ? holds : -holds));
    });
  });

describe("what is proved is what is decided", () => {
  test("for any item the formulas and the evaluator agree on every ban, hold, condition, resting state and person to ask", () => {
    fc.assert(
      fc.property(anyItem, (choose) => {
        expect(sat.solve(choose(spaces))).toBe(true);
        expect(said()).toEqual(decided(care.world.factsIn(sat.value)));
      }),
      { numRuns: 3000, seed: 20261125 },
    );
  });
});

/** Every literal compared, made before the solver is asked. */
function literalsOf(symbolic: SymbolicCare) {
  const conditions = book.derivations.map((each) => each.condition);
  return {
    fired: book.rules.map((rule) => [rule.id, symbolic.fires(rule)] as const),
    conditions: conditions.map((name) => [name, symbolic.condition(name)] as const),
    banned: [...bannable(book)].sort().map((action) => [action, symbolic.banned(action)] as const),
    hold: symbolic.hold,
    conservator: symbolic.escalated("ask_conservator"),
    rests: [...symbolic.rests],
  };
}

function said() {
  const { fired, conditions, banned, hold, conservator, rests } = literals;
  const names = (list: readonly (readonly [string, Literal])[]): string[] =>
    list.flatMap(([name, literal]) => (isTrue(literal) ? [name] : []));
  return {
    fired: names(fired),
    sure: names(conditions.map(([name, { yes }]) => [name, yes] as const)).sort(),
    perhaps: conditions
      .flatMap(([name, { yes, maybe }]) => (isTrue(maybe) && !isTrue(yes) ? [name] : []))
      .sort(),
    banned: names(banned),
    hold: isTrue(hold),
    conservator: isTrue(conservator),
    rest: names(rests),
  };
}

function decided(facts: Facts) {
  const real = decide(book, facts);
  return {
    fired: real.fired.map(({ rule }) => rule.id),
    sure: [...real.conditions].sort(),
    perhaps: [...real.unsureConditions].sort(),
    banned: [...real.banned.keys()].sort(),
    hold: real.hold,
    conservator: real.escalate.some((each) => each.action === "ask_conservator"),
    rest: real.rest ? [real.rest.id] : [],
  };
}
