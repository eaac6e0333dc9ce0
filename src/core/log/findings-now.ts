import type { Finding } from "../items/campaign.ts";
import { UNSURE } from "../items/facts.ts";
import type { Day } from "../units/day.ts";
import type { Filed } from "./kinds.ts";
import { isOf, type Matter, type Standing } from "./standing.ts";

type Answered = Filed<"findingRecorded" | "disagreementSettled">;

/** Answers to one test on one part that contradict, given by people who had not seen each other's; until it is settled. */
export interface Disagreement {
  readonly item: string;
  readonly part: string;
  readonly test: string;
  /** In the order of the log. */
  readonly answers: readonly Answered[];
}

/** A value of the campaign with the event it comes from, by which it takes its place. */
export interface From<T> {
  readonly event: Filed;
  readonly value: T;
}

export function disagreementsIn({ matters }: Standing): Disagreement[] {
  const found: Disagreement[] = [];
  for (const matter of matters.values()) {
    const answers = answersOf(matter.standing);
    const [first] = answers;
    if (first !== undefined && contradict(answers)) {
      const { item, part, test } = first.payload;
      found.push({ item, part, test, answers });
    }
  }
  return found;
}

/** Findings as the campaign takes them: where several days have answers the newest stands there, so that an earlier one is handed on only
 *  where its day tells it apart. Disagreement over several days is handed on as unsure on the newest. */
export const findingsIn = ({ matters }: Standing): From<Finding>[] => [...matters.values()].flatMap(ofMatter);

function ofMatter({ standing, replaced }: Matter): From<Finding>[] {
  const answers = answersOf(standing);
  const [last] = answers.slice(-1);
  if (last === undefined) return [];
  const days = answers.map(({ payload }) => payload.day);
  const first = earliest(days);
  const before = answersOf(replaced).filter(
    ({ payload: { day } }) => first !== undefined && day !== undefined && day < first,
  );
  const found = [...before, ...answers].map((event) => ({ event, value: findingOf(event) }));
  if (!contradict(answers)) return found;
  const { item, part, test } = last.payload;
  const newest = days.reduce((a, b) => ((a ?? "") > (b ?? "") ? a : b), undefined);
  const value = { item, part, test, answer: UNSURE, ...(newest === undefined ? {} : { day: newest }) };
  const isSeen =
    new Set(answers.filter(({ payload }) => payload.day === newest).map(({ payload }) => payload.answer))
      .size > 1;
  return isSeen ? found : [...found, { event: last, value }];
}

/** Numbers of different days are measurements, and may differ; anything else that differs is a contradiction. */
function contradict(answers: readonly Answered[]): boolean {
  const [first, ...rest] = answers.map(({ payload }) => payload);
  if (first === undefined || rest.every(({ answer }) => answer === first.answer)) return false;
  const byDay = new Map<Day | undefined, string | number>();
  for (const { payload } of answers) {
    if (typeof payload.answer !== "number" || payload.day === undefined) return true;
    if ((byDay.get(payload.day) ?? payload.answer) !== payload.answer) return true;
    byDay.set(payload.day, payload.answer);
  }
  return false;
}

const answersOf = (events: readonly Filed[]): Answered[] =>
  events.filter((event) => isOf(event, "findingRecorded", "disagreementSettled"));

function earliest(days: readonly (Day | undefined)[]): Day | undefined {
  return days.reduce((a, b) => (a === undefined || b === undefined || a <= b ? a : b), days[0]);
}

function findingOf({ payload: { item, part, test, answer, day, by } }: Answered): Finding {
  const who = typeof by === "string" || by === undefined ? by : by.join(", ");
  return {
    item,
    part,
    test,
    answer,
    ...(day === undefined ? {} : { day }),
    ...(who === undefined ? {} : { by: who }),
  };
}
