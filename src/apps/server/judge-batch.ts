import type { LogEvent } from "../../core/log/event.ts";
import { KINDS } from "../../core/log/kinds.ts";
import { mayCorrect, mayDo, type RoleTable } from "../../core/log/may-do.ts";
import { readEvent } from "../../core/log/read-event.ts";
import { type CampaignState, eventsAbout, type Subject } from "../../core/log/state.ts";
import { toldOfHealth } from "../../core/log/told-of-health.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import type { Device } from "../../edge/serve/device-book.ts";

/** What is said of one entry of a batch. */
export interface Judged {
  /** Null: it could not be read. */
  readonly event: LogEvent | null;
  /** Null: it may be kept. */
  readonly problem: Problem | null;
}

export interface Bench {
  readonly campaign: string;
  readonly device: Device;
  readonly roles: RoleTable;
  /** What is kept already, to see whose entry a correction is of, and whether a calendar speaks of a person. */
  readonly state: CampaignState;
}

/** Holds each entry that a device sends against what it may write. */
export function judgeBatch(given: readonly unknown[], bench: Bench): Judged[] {
  const read = given.map((each) => readEvent(each));
  const batch = read.flatMap((each) => (each.ok ? [each.value] : []));
  return read.map((each) =>
    each.ok
      ? { event: each.value, problem: whyNot(each.value, batch, bench) }
      : { event: null, problem: each.problems[0] ?? null },
  );
}

function whyNot(event: LogEvent, batch: readonly LogEvent[], bench: Bench): Problem | null {
  const { device, roles } = bench;
  const { who, kind } = event;
  if (event.campaign !== bench.campaign)
    return stop("other-campaign", event.campaign, bench.campaign, "Send it to the server of its campaign.");
  if (event.device !== device.device || who.role !== device.role || !isWriter(event, device))
    return stop(
      "not-your-entry",
      event.id,
      entryOf(device),
      "Send it from the device that wrote it, or by a carry file.",
    );
  if (!isKnown(event))
    return stop(
      "unknown-here",
      event.id,
      "a kind of entry known here",
      "Keep it; take the newer Leafward on the server, then send it again.",
    );
  if (!mayDo(roles, who.role, kind) || !mayCorrectThat(event, batch, bench))
    return stop("not-your-role", kind, who.role, "Ask the lead to write it.");
  if (kind === "calendarChanged" && bench.state.filed.has(`person:${event.payload.who}`))
    return stop(
      "not-a-house-day",
      kind,
      "a station's id, or everyone",
      "Write a person's days as such: away, hours, or clean work this week. They have no note.",
    );
  if (toldOfHealth(event))
    return stop(
      "health-words",
      kind,
      "words about the work alone",
      "It was not written. Leave out whatever is about anybody's health and say it to the person in charge instead; if it is about the item, use other words.",
    );
  return null;
}

const stop = (code: string, got: string, expected: string, remedy: string): Problem => ({
  ...{ code, severity: "stop", got, expected, remedy },
});

/** A device of one person writes for that person. */
const isWriter = ({ who }: LogEvent, { person }: Device): boolean => person === null || who.person === person;

const entryOf = ({ device, role, person }: Device): string =>
  `an entry of ${device} as ${role}${person === null ? "" : `, ${person}`}`;

const ENVELOPE = "id campaign device number clock who kind version payload seen before hash".split(" ");

/** Whether nothing in an event is of a newer version: what cannot be read cannot be searched for what must not be kept. */
function isKnown({ kind, version, clock, who, ...rest }: LogEvent): boolean {
  const known = Object.hasOwn(KINDS, kind) && KINDS[kind as keyof typeof KINDS].version === version; // just looked up
  return (
    known &&
    hasOnly(rest, ENVELOPE) &&
    hasOnly(clock, ["wall", "counter"]) &&
    hasOnly(who, ["role", "person"])
  );
}

const hasOnly = (value: object, names: readonly string[]): boolean =>
  Object.keys(value).every((name) => names.includes(name));

function mayCorrectThat({ kind, payload, who }: LogEvent, batch: readonly LogEvent[], bench: Bench): boolean {
  if (kind !== "eventCorrected") return true;
  const { event: id, about } = payload as { readonly event: string; readonly about: readonly Subject[] }; // held against its schema
  const target =
    batch.find((each) => each.id === id) ??
    about.flatMap((subject) => eventsAbout(bench.state, subject)).find((each) => each.id === id);
  return mayCorrect(bench.roles, who.role, target?.device === bench.device.device);
}
