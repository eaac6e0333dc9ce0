import type { Facts, FactValue } from "../items/facts.ts";
import { decide } from "./decide.ts";
import { evaluate, undecided } from "./evaluate.ts";
import type { Consequence, Rule, RuleBook, Test } from "./rule-book.ts";
import { OWN_WORK, type Settled, settle } from "./settle.ts";
import { OPEN } from "./truth.ts";

/** What to ask next about one part, and what else is open. */
export interface NextQuestion {
  /** The tests of the question: one, or several that a single glance answers; empty when nothing is left to ask here. */
  readonly tests: readonly Test[];
  /** Rules that an answer could still bring in or rule out. */
  readonly waiting: readonly string[];
  /** Nothing that can still be found at the Door would change the care. */
  readonly settled: boolean;
  /** Tests that would matter, but that a rule forbids to make: test → rule. */
  readonly forbidden: readonly { readonly test: Test; readonly rule: string }[];
  /** Tests that would matter and take a day or more, or another pair of hands. */
  readonly later: readonly Test[];
}

/** Gentlest first. */
const NEARNESS = ["notice", "look", "handle", "touch", "wait", "wetting"];

/** What to answer where a glance finds nothing, and what a sound item gives. */
export const soundAnswer = (test: Test): FactValue =>
  test.answers.startsWith("none/")
    ? "none"
    : test.answers.startsWith("cut/")
      ? "cut"
      : test.answers.startsWith("safety/")
        ? "safety"
        : test.answers === "degrees"
          ? 120
          : test.answers === "number % RH"
            ? 50
            : test.answers.startsWith("yes/no")
              ? "no"
              : 0;

/**
 * The smallest next test that can change the care of a part: stop tests before touching ones, gentle before near, never one a rule forbids.
 * Asked are the must-ask tests of the format, what a finding points to, and one glance for what people otherwise only volunteer.
 */
export function nextQuestion(book: RuleBook, facts: Facts): NextQuestion {
  const care = decide(book, facts);
  const stopped = ["clean_any", "image"].every((action) =>
    care.banned
      .get(action)
      ?.reasons.some(
        ({ tier }) => tier === 1 && !care.banned.get(action)?.until.every((until) => OWN_WORK.has(until)),
      ),
  );
  const open = openTests(book, facts).filter((test) => !stopped || test.stop);
  const swaying = swayingRules(book, facts, open);
  const asked = open.filter((test) => swaying.some(({ tests }) => tests.has(test.id)));
  const forbidden = asked.flatMap((test) => {
    const ban = care.banned.get(`test_${test.id}`);
    return ban ? [{ test, rule: ban.reasons[0]?.rule ?? "" }] : [];
  });
  const free = asked.filter((test) => !care.banned.has(`test_${test.id}`));
  const now = free.filter((test) => test.waitHours === 0 && !needsAnother(test)).sort(gentler);
  const required = requiredTests(book, facts);
  const pointedTo = (test: Test): boolean => {
    const alone = new Set(swayingAlone(book, facts, test).map(({ rule }) => rule));
    return swaying.some(({ rule, tests }) => tests.has(test.id) && !alone.has(rule));
  };
  const glance = now.filter((test) => !required.has(test.id) && atAGlance(test));
  const rest = now.filter((test) => required.has(test.id) || (!atAGlance(test) && pointedTo(test)));
  const first = rest[0];
  const tests = glance.length > 0 && !(first?.stop && first.by === "notice") ? glance : first ? [first] : [];
  return {
    tests,
    waiting: [
      ...new Set(
        swaying.flatMap(({ rule, tests: own }) => (tests.some(({ id }) => own.has(id)) ? rule.id : [])),
      ),
    ],
    settled: tests.length === 0,
    forbidden,
    later: free.filter((test) => test.waitHours > 0 || needsAnother(test)),
  };
}

const needsAnother = (test: Test): boolean => test.who.startsWith("conservator");
const atAGlance = ({ by, answers }: Test): boolean =>
  (by === "notice" || by === "look") && answers.startsWith("yes/no");

const gentler = (a: Test, b: Test): number =>
  Number(b.stop) - Number(a.stop) ||
  NEARNESS.indexOf(a.by) - NEARNESS.indexOf(b.by) ||
  a.waitHours - b.waitHours ||
  a.minutes - b.minutes;

function requiredTests(book: RuleBook, facts: Facts): ReadonlySet<string> {
  const format = String(facts["item.format"]);
  return new Set([...(book.requiredTests["*"] ?? []), ...(book.requiredTests[format] ?? [])]);
}

const openTests = (book: RuleBook, facts: Facts): Test[] =>
  [...book.tests.values()].filter(
    ({ id, formats }) =>
      facts[`obs.${id}`] === undefined &&
      (formats.length === 0 || formats.includes(String(facts["item.format"]))),
  );

/** Rules an open test could still bring in or rule out so that the care changes, each with the open tests it hangs on. */
function swayingRules(
  book: RuleBook,
  facts: Facts,
  open: readonly Test[],
): { rule: Rule; tests: ReadonlySet<string> }[] {
  if (open.length === 0) return [];
  const asIfOpen = {
    ...facts,
    "state.required_tests_missing": "no",
    ...Object.fromEntries(open.map((test) => [`obs.${test.id}`, OPEN])),
  };
  const names = new Set(open.map((test) => `obs.${test.id}`));
  const { rules, loose } = undecided(book, asIfOpen, names);
  const maybe = new Set(rules);
  const answered = { ...facts, "state.required_tests_missing": "no" };
  const sure = evaluate(book, answered).fired.filter(({ rule }) => !maybe.has(rule));
  const settled = settle(book, sure, [], true);
  return rules
    .filter((rule) => rule.consequences.some((each) => adds(settled, each)))
    .map((rule) => ({ rule, tests: openTestsOf(book, rule, names, loose) }));
}

/** Whether a consequence says anything that is not said already. What adds nothing alone adds nothing together, since no command lifts a ban. */
function adds(settled: Settled, { verb, action, until, members, before, after }: Consequence): boolean {
  if (verb === "forbid")
    return members.some((member) => {
      const ban = settled.banned.get(member);
      return !ban || (!ban.until.includes("never") && !ban.until.includes(until));
    });
  const known = settled.said.get(verb)?.has(action) === true;
  if (verb === "prefer")
    return !known && !settled.banned.has(action) && !settled.said.get("require")?.has(action);
  const pair = before ? `${action},${before}` : after ? `${after},${action}` : null;
  return !known || (pair !== null && !settled.order.some((each) => String(each) === pair));
}

/** The open tests a rule hangs on, through the conditions that are themselves still open. */
function openTestsOf(
  book: RuleBook,
  rule: Rule,
  open: ReadonlySet<string>,
  loose: ReadonlySet<string>,
): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (fact: string): void => {
    if (!loose.has(fact)) return;
    if (open.has(fact)) found.add(fact.slice("obs.".length));
    for (const each of book.derivations)
      if (`cond.${each.condition}` === fact) for (const read of each.reads) if (read !== fact) visit(read);
  };
  rule.reads.forEach(visit);
  return found;
}

/** The rules a test sways on an item with nothing found: what people volunteer, or every item of the format is asked. */
function swayingAlone(book: RuleBook, facts: Facts, test: Test): ReturnType<typeof swayingRules> {
  const sound: Record<string, FactValue> = {};
  for (const [name, value] of Object.entries(facts)) if (!name.startsWith("obs.")) sound[name] = value;
  for (const each of book.tests.values())
    if (each.id !== test.id && each.waitHours === 0 && !needsAnother(each))
      sound[`obs.${each.id}`] = soundAnswer(each);
  return swayingRules(book, sound, [test]);
}
