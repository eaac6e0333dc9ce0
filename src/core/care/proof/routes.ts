import type { Act } from "../../items/campaign.ts";
import type { Facts, FactValue } from "../../items/facts.ts";
import type { Care, Route } from "../care.ts";
import { decide } from "../decide.ts";
import { type ItemCare, stateFacts } from "../item-care.ts";
import type { Norms } from "../norms.ts";
import { routeOf } from "../route.ts";
import type { RuleBook } from "../rule-book.ts";
import { METHODS } from "../settle.ts";
import { Circuit, type Literal, not, type Sat } from "./circuit.ts";
import type { Verdict } from "./prove.ts";
import { careOfWorld, type SymbolicCare } from "./symbolic.ts";
import { DOOR, FactSpaces, World } from "./world.ts";

/** What a route is made from: everything it looks at in a care. Items that agree in all of it get routes of one shape. */
const CONDITIONS = [
  "mould_active",
  "mould_dormant",
  "mould_suspected",
  "red_rot",
  "wet",
  "damp",
  "insect_active",
  "insect_uncertain",
];
const BANS = ["image", "clean_any", "wrap_cover_final", "image_covers", "clean_pages", ...METHODS];
const PHOTOGRAPHS = ["photo_print", "album", "glass_negative", "film_negative", "photo_cased"];
const ACTS_BEFORE: readonly Act[] = ["release", "covers", "wrap", "clean"];
/** Of people, tools and stations a route knows nothing. */
const ELSEWHERE =
  /^(person|task|tool|station|room|stock|record)\.|^plan\.(pressure|scope|ends|request)|observers_disagree/;

/**
 * Draws from the solver one item for every pattern of conditions and bans that can occur, with any of the acts done before, walks the
 * route each gets, and asks the rules again before every step. What is checked here shares no code with the making of the route.
 */
export function proveRoutes(book: RuleBook, norms: Norms, sat: Sat): Verdict {
  const circuit = new Circuit(sat);
  const spaces = new FactSpaces(circuit, book);
  const says = "No route offers a forbidden act or skips an order, whatever was found and done before.";
  let questions = 0;
  for (const done of subsets(ACTS_BEFORE)) {
    const state = stateFacts(new Set(done));
    const fixed = Object.fromEntries(
      [...spaces.spaces.keys()].filter((fact) => ELSEWHERE.test(fact)).map((fact) => [fact, null]),
    );
    const care = careOfWorld(circuit, book, new World(circuit, spaces, { ...fixed, ...state }));
    const assumed = ["clean", "image", "rehouse"].map((step) => care.world.is("plan.step", step));
    const pattern = patternOf(circuit, care);
    const marker = circuit.variable();
    while (sat.solve([marker, ...assumed])) {
      questions += 1;
      const facts = care.world.factsIn(sat.value);
      const here = pattern.map((literal) => (isTrue(sat, literal) ? not(literal) : literal));
      const fault = faultOfRoute(book, norms, facts, new Set(done));
      if (fault)
        return {
          id: "no-forbidden-step",
          says,
          holds: false,
          questions,
          counterExample: facts,
          about: fault,
        };
      sat.clause([not(marker), ...here]);
    }
  }
  return { id: "no-forbidden-step", says, holds: true, questions, counterExample: null, about: "" };
}

const isTrue = (sat: Sat, literal: Literal): boolean =>
  literal < 0 ? !sat.value(-literal) : sat.value(literal);

const subsets = <T>(list: readonly T[]): T[][] =>
  list.reduce<T[][]>((all, each) => [...all, ...all.map((few) => [...few, each])], [[]]);

function patternOf(circuit: Circuit, care: SymbolicCare): Literal[] {
  const photograph = circuit.or(...PHOTOGRAPHS.map((format) => care.world.is("item.format", format)));
  return [
    ...CONDITIONS.map((each) => care.condition(each).maybe),
    photograph,
    care.hold,
    care.atTheDoor,
    ...BANS.map(care.banned),
  ];
}

function faultOfRoute(book: RuleBook, norms: Norms, facts: Facts, done: ReadonlySet<Act>): string | null {
  const at = (acts: ReadonlySet<Act>, answered: boolean): Care =>
    decide(book, { ...facts, ...stateFacts(acts), ...(answered ? { [DOOR]: "no" } : {}) });
  const whole = at(done, false);
  const care: ItemCare = {
    item: { id: "any", title: "", facts: ofGroup(facts, "item."), parts: [], priority: "want" },
    whole,
    parts: [],
    at: (acts, answered = false) => [{ name: "", leaves: null, care: at(acts, answered) }],
    fineFilterVacuum: facts["site.hepa_vacuum"] === "yes",
    done,
    answers: ofGroup(facts, "obs."),
  };
  const route = routeOf(norms, care);
  return route.destiny === "route" ? faultOnRoute(route, whole, done, at) : null;
}

function faultOnRoute(
  { steps }: Route,
  whole: Care,
  done: ReadonlySet<Act>,
  at: (acts: ReadonlySet<Act>, answered: boolean) => Care,
): string | null {
  const present = new Set([...whole.conditions, ...whole.unsureConditions]);
  const soFar = new Set(done);
  if (whole.missingTests.length > 0) return "on a route with a must-ask test open";
  for (const { act, methods } of steps) {
    const now = at(soFar, true);
    const banned = [...(OFFERS[act] ?? []), ...methods].find((action) => now.banned.has(action));
    if (banned) return `${act}: ${banned} is forbidden by ${now.banned.get(banned)?.reasons[0]?.rule}`;
    if (!now.rest) return `${act}: no resting state before it`;
    if (act !== "admit" && act !== "release" && act !== "box") {
      const grows = ["mould_active", "mould_dormant", "mould_suspected"].some((each) => present.has(each));
      if (grows && !soFar.has("release")) return `${act} before release`;
    }
    if (present.has("red_rot")) {
      if (act === "wrap" && !soFar.has("covers")) return "wrapped before its covers are pictured";
      if ((act === "clean" || act === "image") && !soFar.has("wrap")) return `${act} before it is wrapped`;
    }
    soFar.add(act);
  }
  return null;
}

/** The acts of the rules that a step stands for. */
const OFFERS: Readonly<Partial<Record<Act, readonly string[]>>> = {
  covers: ["image_covers"],
  wrap: ["wrap_cover_final"],
  clean: ["clean_any"],
  image: ["image", "image_in_camera_zone", "image_pages"],
};

const ofGroup = (facts: Facts, prefix: string): Record<string, FactValue> =>
  Object.fromEntries(
    Object.entries(facts).flatMap(([name, value]) =>
      name.startsWith(prefix) ? [[name.slice(prefix.length), value]] : [],
    ),
  );
