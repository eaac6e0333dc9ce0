import { type Outcome, type Problem, refused } from "../outcome/problem.ts";
import { answerFits } from "./answer-fits.ts";
import type { Json } from "./canonical-json.ts";
import { tick } from "./clock.ts";
import { hashOf, type LogEvent, type Who } from "./event.ts";
import { healthWords, healthWordsInName } from "./health-words.ts";
import { KINDS, type Kind, kindOf, type Payload } from "./kinds.ts";
import type { Pen } from "./pen.ts";
import { nextUlid } from "./ulid.ts";
import { unfitIn } from "./unfit.ts";

/** What is to be written down. */
export type Entry = {
  readonly [K in Kind]: {
    readonly kind: K;
    readonly payload: Payload<K>;
    readonly who: Who;
    /** What it replaces, as `seenOf` finds it; absent: nothing. */
    readonly seen?: readonly string[];
  };
}[Kind];

/** The wall clock, and ten random bytes. */
export interface Moment {
  /** Milliseconds since 1970. */
  readonly now: number;
  readonly random: Uint8Array;
}

/** The tests of the vocabulary: `RuleBook.tests`. */
export type Tests = ReadonlyMap<string, { readonly answers: string }>;

export interface Written {
  readonly event: LogEvent;
  /** For the next event; keep it, or find it again with `penOf`. */
  readonly pen: Pen;
}

/**
 * Writes one event, or says why not. Words are searched here and not on reading, so that a longer list of words never makes an old log
 * unreadable; the vocabulary binds here alone for the same reason.
 */
export function writeEvent(pen: Pen, entry: Entry, { now, random }: Moment, tests: Tests): Outcome<Written> {
  const { version } = KINDS[entry.kind];
  const problem =
    unfitIn({ ...entry, version }) ?? notAnAnswer(entry, tests) ?? tellsOfHealth(entry, version);
  if (problem !== null) return refused(problem);
  const clock = tick(pen.clock, now);
  const { campaign, device, before } = pen;
  const unsealed = {
    id: nextUlid(clock.wall, random, pen.lastId),
    campaign,
    device,
    number: pen.number + 1,
    clock,
    who: entry.who,
    kind: entry.kind,
    version,
    payload: entry.payload as { readonly [key: string]: Json }, // unfitIn has just said so
    seen: entry.seen ?? [],
    before,
  };
  const event = { ...unsealed, hash: hashOf(unsealed) };
  const next = { campaign, device, number: event.number, before: event.hash, lastId: event.id, clock };
  return { ok: true, value: { event, pen: next } };
}

function notAnAnswer(entry: Entry, tests: Tests): Problem | null {
  if (entry.kind !== "findingRecorded" && entry.kind !== "disagreementSettled") return null;
  const { test, answer } = entry.payload;
  const known = tests.get(test);
  if (known === undefined)
    return {
      code: "unknown-test",
      severity: "stop",
      got: test,
      expected: "a test of the vocabulary",
      remedy: "The tests are listed in data/vocabulary.json.",
    };
  if (answerFits(known.answers, answer)) return null;
  const remedy = "Write one of these; write nothing when it was not tested.";
  return { code: "not-an-answer", severity: "stop", got: String(answer), expected: known.answers, remedy };
}

/** The words are not repeated: the problem itself may be kept somewhere. */
function tellsOfHealth(entry: Entry, version: number): Problem | null {
  const texts = kindOf(entry.kind, version)?.said?.(entry.payload) ?? [];
  const name = entry.kind === "personListed" ? entry.payload.name : "";
  if (texts.every((text) => healthWords(text ?? "").length === 0) && healthWordsInName(name).length === 0)
    return null;
  return {
    code: "health-words",
    severity: "stop",
    got: entry.kind,
    remedy:
      "It was not written. Leave out whatever is about anybody's health and say it to the person in charge instead; if it is about the item, use other words.",
  };
}
