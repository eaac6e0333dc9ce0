import { readPublished } from "../../src/edge/published.ts";
import type { Draft } from "./draft.ts";
import type { FindingRow } from "./rows.ts";
import { type Chance, entryAt } from "./seeded.ts";

/** Who surveyed, and on which days. */
export interface Surveyors {
  readonly days: readonly string[];
  readonly people: readonly string[];
}

/** Share of each test's answers that come out unsure where the answer would be no. Tests that stop an item are seldom in doubt. */
const DOUBT: Readonly<Record<string, number>> = {
  damp_to_touch: 0.01,
  fragments_fall: 0.012,
  leaves_stuck: 0.02,
  media_flakes: 0.015,
  media_offsets: 0.03,
  rusted_fasteners: 0.01,
  springs_back: 0.03,
  emulsion_lifting: 0.012,
  stuck_to_glass: 0.02,
  leaf_delaminates: 0.02,
  order_uncertain: 0.03,
  devotional_deposit: 0.01,
  inserts: 0.02,
  vinegar_odour: 0.01,
  live_insects: 0.003,
  powder_between: 0.001,
};

/** Answers that are not simply no. */
const ORDINARY: Readonly<Record<string, (chance: Chance) => string | number>> = {
  rub_mark: () => "none",
  film_edge_mark: () => "safety",
  writing_raised_or_cut: () => "cut",
  opening_angle: (chance) => Math.round(chance.skewed(70, 120, 180) / 5) * 5,
};

/** The must-ask tests of a format, as `data/vocabulary.json` lists them. */
export function mustAsk(format: string): string[] {
  const { requiredTests } = readPublished("vocabulary.json") as { requiredTests: Record<string, string[]> };
  return [...(requiredTests["*"] ?? []), ...(requiredTests[format] ?? [])];
}

/** Answers every must-ask test of every item, and leaves one open for `left` of them: those stay at the Door. */
export function answerAll(chance: Chance, drafts: readonly Draft[], left: number): void {
  const asked = new Map(
    [...new Set(drafts.map((draft) => draft.row.format))].map((format) => [format, mustAsk(format)]),
  );
  for (const draft of drafts)
    for (const test of asked.get(draft.row.format) ?? []) draft.answers[test] ??= ordinary(chance, test);
  for (const draft of chance.some(untroubled(drafts), left))
    delete draft.answers[chance.pick(asked.get(draft.row.format) ?? [])];
}

/** Items no story needs: sound in every test, no part of their own. */
const untroubled = (drafts: readonly Draft[]): Draft[] =>
  drafts.filter(
    ({ answers, parts, row }) =>
      row.format !== "other" && parts.length === 0 && Object.values(answers).every(isHarmless),
  );

const isHarmless = (answer: string | number): boolean => answer !== "yes" && answer !== "unsure";

function ordinary(chance: Chance, test: string): string | number {
  const known = ORDINARY[test];
  if (known) return known(chance);
  return chance.happens(DOUBT[test] ?? 0) ? "unsure" : "no";
}

/** The answers as rows: an item is surveyed by one person on one day, shelf after shelf. */
export function findingsOf(chance: Chance, drafts: readonly Draft[], by: Surveyors): FindingRow[] {
  const order = [...drafts].sort(byShelf);
  const dayOf = new Map(
    order.map((draft, at) => [draft, entryAt(by.days, Math.floor((at * by.days.length) / order.length))]),
  );
  return drafts.flatMap((draft) => {
    const person = chance.pick(by.people);
    const date = dayOf.get(draft) ?? "";
    const rows = (part: string, answers: Draft["answers"]): FindingRow[] =>
      Object.entries(answers).map(([test, answer]) => ({
        item: draft.row.item,
        part,
        test,
        answer,
        date,
        by: person,
      }));
    return [...rows("", draft.answers), ...draft.parts.flatMap((part) => rows(part.row.part, part.answers))];
  });
}

const byShelf = (a: Draft, b: Draft): number =>
  plainOrder(a.row.found_in ?? "", b.row.found_in ?? "") || plainOrder(a.row.item, b.row.item);
const plainOrder = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
