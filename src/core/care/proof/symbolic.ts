import type { Tier } from "../reason.ts";
import type { Consequence, Rule, RuleBook } from "../rule-book.ts";
import { METHODS, OWN_WORK } from "../settle.ts";
import { type Circuit, FALSE, type Literal, not, TRUE } from "./circuit.ts";
import { type Both, DOOR, truthOf, type World } from "./world.ts";

/** The care of every possible set of facts at once: the literal that says when each ruling holds. */
export interface SymbolicCare {
  readonly world: World;
  /** Surely or perhaps there, by condition. */
  readonly condition: (name: string) => Both;
  /** A must-ask test has no answer. */
  readonly atTheDoor: Literal;
  readonly holds: (rule: Rule) => Both;
  readonly fires: (rule: Rule) => Literal;
  readonly banned: (action: string) => Literal;
  readonly required: (action: string) => Literal;
  readonly escalated: (action: string) => Literal;
  readonly warned: (action: string) => Literal;
  /** Required by a rule for people's safety. */
  readonly protects: (action: string) => Literal;
  readonly hold: Literal;
  /** Held, or pictured as it was found with no tool near it. */
  readonly untouched: Literal;
  /** A command of a higher tier lifts a ban on this action. */
  readonly lifted: (action: string) => Literal;
  /** Resting state chosen, by id. */
  readonly rests: ReadonlyMap<string, Literal>;
}

type Said = { readonly rule: Rule; readonly consequence: Consequence };

/** The rules over a world, mirroring `evaluate` and `settle` step by step; a test compares them on many items. */
export function careOfWorld(circuit: Circuit, book: RuleBook, world: World): SymbolicCare {
  const atTheDoor = doorOf(circuit, book, world);
  const conditions = new Map<string, Both>();
  const lookup = (comparison: Parameters<World["compare"]>[0]): Both => {
    if (comparison.f === DOOR) return { yes: atTheDoor, maybe: atTheDoor };
    return comparison.f.startsWith("cond.")
      ? (conditions.get(comparison.f.slice(5)) ?? { yes: FALSE, maybe: FALSE })
      : world.compare(comparison);
  };
  for (const { condition, when } of book.derivations) {
    const truth = truthOf(circuit, when, lookup);
    const before = conditions.get(condition);
    conditions.set(
      condition,
      before
        ? { yes: circuit.or(before.yes, truth.yes), maybe: circuit.or(before.maybe, truth.maybe) }
        : truth,
    );
  }
  const truths = book.rules.map((rule) => truthOf(circuit, rule.when, lookup));
  const holds = (rule: Rule): Both => truths[rule.at] as Both;
  const fires = (rule: Rule): Literal => (rule.unsure === "fire" ? holds(rule).maybe : holds(rule).yes);
  const said = saidOf(book);
  const anyFires = (list: readonly Said[] = []): Literal =>
    circuit.or(...list.map(({ rule }) => fires(rule)));

  const bans = bansOf(book);
  const commandsBelow = (action: string, tier: Tier): Literal =>
    anyFires(
      said("require", action).filter(
        ({ rule, consequence }) => !consequence.before && !consequence.after && rule.reason.tier < tier,
      ),
    );
  const bannedBy = (action: string, wanted: (each: Said) => boolean): Literal =>
    circuit.or(
      ...([1, 2, 3, 4] as const).map((tier) =>
        circuit.without(
          anyFires((bans.get(action) ?? []).filter((each) => each.rule.reason.tier === tier && wanted(each))),
          commandsBelow(action, tier),
        ),
      ),
    );
  const banned = (action: string): Literal => bannedBy(action, () => true);
  const forLong = (each: Said): boolean =>
    !OWN_WORK.has(each.consequence.until) || each.consequence.until === "cleaned";
  const cleaning = world.is("plan.step", "clean");
  const waits = circuit.or(
    ...METHODS.map((method) => circuit.without(banned(method), bannedBy(method, forLong))),
  );
  const stuck = circuit.and(cleaning, ...METHODS.map(banned));
  const asFound = circuit.without(anyFires(said("require", "image_as_found")), waits);
  const required = (action: string): Literal => {
    const asked = anyFires(said("require", action));
    const all = action === "hold_item" ? circuit.or(asked, circuit.without(stuck, asFound)) : asked;
    return circuit.without(all, banned(action));
  };
  const hold = required("hold_item");
  return {
    world,
    condition: (name) => conditions.get(name) ?? { yes: FALSE, maybe: FALSE },
    atTheDoor,
    holds,
    fires,
    banned,
    required,
    escalated: (action) => {
      const asked = anyFires(said("escalate", action));
      return action === "ask_conservator" ? circuit.or(asked, circuit.without(stuck, waits)) : asked;
    },
    warned: (action) => anyFires(said("warn", action)),
    protects: (action) => anyFires(said("require", action).filter(({ rule }) => rule.reason.tier === 1)),
    hold,
    untouched: circuit.or(hold, circuit.and(required("image_as_found"), ...METHODS.map(banned))),
    lifted: (action) =>
      circuit.or(
        ...([2, 3, 4] as const).map((tier) =>
          circuit.and(
            anyFires((bans.get(action) ?? []).filter(({ rule }) => rule.reason.tier === tier)),
            commandsBelow(action, tier),
          ),
        ),
      ),
    rests: restsOf(circuit, book, lookup, banned),
  };
}

/** What the rules say, by verb and action. */
function saidOf(book: RuleBook): (verb: Consequence["verb"], action: string) => readonly Said[] {
  const found = new Map<string, Said[]>();
  for (const rule of book.rules)
    for (const consequence of rule.consequences) {
      const key = `${consequence.verb} ${consequence.action}`;
      found.set(key, [...(found.get(key) ?? []), { rule, consequence }]);
    }
  return (verb, action) => found.get(`${verb} ${action}`) ?? [];
}

/** Bans by action, a ban on a family among those of its members. */
function bansOf(book: RuleBook): Map<string, Said[]> {
  const found = new Map<string, Said[]>();
  for (const rule of book.rules)
    for (const consequence of rule.consequences)
      if (consequence.verb === "forbid")
        for (const action of consequence.members)
          found.set(action, [...(found.get(action) ?? []), { rule, consequence }]);
  return found;
}

function doorOf(circuit: Circuit, book: RuleBook, world: World): Literal {
  const missing = (tests: readonly string[]): Literal =>
    circuit.or(...tests.map((test) => world.absent(`obs.${test}`)));
  const formats = book.facts.get("item.format")?.values ?? [];
  return circuit.and(
    not(world.absent("item.format")),
    circuit.or(
      missing(book.requiredTests["*"] ?? []),
      ...formats.map((format) =>
        circuit.and(world.is("item.format", format), missing(book.requiredTests[format] ?? [])),
      ),
    ),
  );
}

function restsOf(
  circuit: Circuit,
  book: RuleBook,
  lookup: Parameters<typeof truthOf>[2],
  banned: (action: string) => Literal,
): Map<string, Literal> {
  const chosen = new Map<string, Literal>();
  let open: Literal = TRUE;
  for (const { id, when, acts } of book.rests) {
    const fits = circuit.and(truthOf(circuit, when, lookup).maybe, ...acts.map((act) => not(banned(act))));
    chosen.set(id, circuit.and(open, fits));
    open = circuit.and(open, not(fits));
  }
  return chosen;
}
