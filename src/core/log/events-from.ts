import type { Campaign } from "../items/campaign.ts";
import type { Problem } from "../outcome/problem.ts";
import type { Day } from "../units/day.ts";
import type { LogEvent, Who } from "./event.ts";
import { type ImportEntry, importEntries } from "./import-entries.ts";
import type { Pen } from "./pen.ts";
import { type Entry, type Moment, type Tests, writeEvent } from "./write-event.ts";

export interface Imported {
  readonly events: readonly LogEvent[];
  readonly pen: Pen;
  /** What could not be written, and words that were left out; everything else is in the events. */
  readonly problems: readonly Problem[];
}

/** Writes a whole campaign, as a folder gave it, into the log of one device. */
export const eventsFrom = (campaign: Campaign, pen: Pen, who: Who, moment: Moment, tests: Tests): Imported =>
  eventsOf(importEntries(campaign), pen, who, moment, tests);

/** Writes entries one after the other. */
export function eventsOf(
  entries: Iterable<ImportEntry>,
  pen: Pen,
  who: Who,
  moment: Moment,
  tests: Tests,
): Imported {
  const events: LogEvent[] = [];
  const problems: Problem[] = [];
  const answered = new Map<string, { readonly id: string; readonly day: Day }[]>();
  let last = pen;
  for (const entry of entries) {
    const seen = [...(entry.seen ?? []), ...seenBy(entry, answered)];
    const write = (payload: object) =>
      writeEvent(last, { kind: entry.kind, payload, who, seen } as unknown as Entry, moment, tests); // writing holds it against its schema
    let written = write(entry.payload);
    if (!written.ok && entry.plain !== undefined) {
      problems.push(textNotKept(entry));
      written = write(entry.plain);
    }
    if (!written.ok) {
      problems.push(...written.problems);
      continue;
    }
    const { event } = written.value;
    last = written.value.pen;
    events.push(event);
    remember(entry, event.id, answered);
  }
  return { events, pen: last, problems };
}

type Answered = Map<string, { readonly id: string; readonly day: Day }[]>;

/** The earlier days' answers to the same question; answers of one day do not know of each other. */
function seenBy({ answers }: ImportEntry, answered: Answered): string[] {
  const day = answers?.day;
  if (answers === undefined || day === undefined) return [];
  return (answered.get(answers.key) ?? []).filter((each) => each.day < day).map(({ id }) => id);
}

function remember({ answers }: ImportEntry, id: string, answered: Answered): void {
  if (answers?.day === undefined) return;
  answered.set(answers.key, [...(answered.get(answers.key) ?? []), { id, day: answers.day }]);
}

const textNotKept = ({ kind, payload }: ImportEntry): Problem => {
  const { who, person, store } = payload as {
    readonly who?: string;
    readonly person?: string;
    readonly store?: string;
  };
  return {
    code: "text-not-kept",
    severity: "note",
    got: [kind, person ?? store ?? who ?? ""].join(" ").trim(),
    remedy: "Look at the note or name there; nothing about anybody's health is kept.",
  };
};
