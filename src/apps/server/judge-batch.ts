import type { LogEvent } from "../../core/log/event.ts";
import { kindOf } from "../../core/log/kinds.ts";
import { mayCorrect, mayDo, type RoleTable } from "../../core/log/may-do.ts";
import { readEvent } from "../../core/log/read-event.ts";
import { type CampaignState, EMPTY_STATE, eventsAbout, type Subject } from "../../core/log/state.ts";
import { subjectsOf } from "../../core/log/subjects.ts";
import { stationsKnown, thingsKnown } from "../../core/log/things.ts";
import { beyond, toldOfHealth } from "../../core/log/told-of-health.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import type { Device, Former } from "../../edge/serve/device-book.ts";

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
  /** As whom the device was let in before. */
  readonly former: readonly Former[];
  readonly roles: RoleTable;
  /** What is kept already; asked for only where an entry cannot be judged by itself. */
  state(): Promise<CampaignState>;
}

/** What an entry is judged beside. */
interface Beside extends Omit<Bench, "state"> {
  readonly batch: readonly LogEvent[];
  /** Those with a word of health, which may yet be the number of a thing. */
  readonly suspects: ReadonlySet<LogEvent>;
  readonly state: CampaignState;
  readonly isThing: (name: string) => boolean;
}

/** Holds each entry that a device sends against what it may write. What the batch lists itself counts as known. */
export async function judgeBatch(given: readonly unknown[], bench: Bench): Promise<Judged[]> {
  const read = given.map((each) => readEvent(each));
  const batch = read.flatMap((each) => (each.ok ? [each.value] : []));
  const suspects = new Set(batch.filter((event) => toldOfHealth(event, () => false)));
  const mustLookBack = suspects.size > 0 || batch.some(({ kind }) => LOOK_BACK.has(kind));
  const state = mustLookBack ? await bench.state() : EMPTY_STATE;
  const beside = { ...bench, batch, suspects, state, isThing: thingsKnown(state, batch) };
  return read.map((each) =>
    each.ok
      ? { event: each.value, problem: whyNot(each.value, beside) }
      : { event: null, problem: each.problems[0] ?? null },
  );
}

/** Kinds that are judged by what is kept: whose entry is corrected, what days are a station's. */
const LOOK_BACK: ReadonlySet<string> = new Set(["eventCorrected", "calendarChanged"]);

function whyNot(event: LogEvent, beside: Beside): Problem | null {
  const { device, roles } = beside;
  const { who, kind } = event;
  if (event.campaign !== beside.campaign)
    return stop("other-campaign", event.campaign, beside.campaign, "Send it to the server of its campaign.");
  if (!isItsOwn(event, beside)) return notYours(event, device);
  if (kindOf(kind, event.version) === null || beyond(event).length > 0)
    return stop(
      "unknown-here",
      event.id,
      "a kind of entry known here",
      "Keep it; take the newer Leafward on the server, then send it again.",
    );
  if (!mayDo(roles, who.role, kind))
    return stop("not-your-role", kind, who.role, "Ask the lead to write it.");
  if (kind === "eventCorrected") return whyNotCorrect(event, beside);
  if (kind === "calendarChanged" && !isHouseDay(event, beside))
    return stop(
      "not-a-house-day",
      kind,
      "a station's id, or everyone",
      "Write a person's days as such: away, hours, or clean work this week. They have no note. A station is listed first.",
    );
  return whyNotSaid(event, beside);
}

const stop = (code: string, got: string, expected: string, remedy: string): Problem => ({
  ...{ code, severity: "stop", got, expected, remedy },
});

const whyNotSaid = (event: LogEvent, { suspects, isThing }: Beside): Problem | null =>
  suspects.has(event) && toldOfHealth(event, isThing)
    ? stop("health-words", event.kind, "words about the work alone", LEAVE_OUT)
    : null;

const LEAVE_OUT =
  "It was not written. Leave out whatever is about anybody's health and say it to the person in charge instead; if it is about the item, use other words. If it is an item's number, list the item first; a new bag or box gets another name.";

/** Whether a device wrote it, as whom it is let in now or was then. One of one person writes for that person. */
function isItsOwn({ device: writer, who, clock }: LogEvent, { device, former }: Beside): boolean {
  const then = former.filter(({ until }) => clock.wall <= until);
  return (
    writer === device.device &&
    [device, ...then].some(
      ({ role, person }) => who.role === role && (person === null || who.person === person),
    )
  );
}

function notYours({ id, device: writer, who }: LogEvent, { device, role, person }: Device): Problem {
  const expected = `an entry of ${device} as ${role}${person === null ? "" : `, ${person}`}`;
  const remedy =
    writer === device
      ? `Keep it. Ask the lead to let this device in again as ${who.role}, send it, and then as ${role} again.`
      : "Send it from the device that wrote it, or by a carry file.";
  return stop("not-your-entry", id, expected, remedy);
}

function isHouseDay({ payload: { who } }: LogEvent, { state, batch }: Beside): boolean {
  const isPersons =
    state.filed.has(`person:${who}`) ||
    batch.some(({ kind, payload }) => kind === "personListed" && payload.person === who);
  return !isPersons && (who === "everyone" || stationsKnown(state, batch).has(String(who)));
}

/** A correction that leaves out something its target is filed under would count there only by half. */
function whyNotCorrect(event: LogEvent, beside: Beside): Problem | null {
  const { batch, state, device, roles } = beside;
  const { event: id, about } = event.payload as {
    readonly event: string;
    readonly about: readonly Subject[];
  }; // held against its schema
  const target =
    batch.find((each) => each.id === id) ??
    about.flatMap((subject) => eventsAbout(state, subject)).find((each) => each.id === id);
  if (!mayCorrect(roles, event.who.role, target?.device === device.device))
    return stop("not-your-role", event.kind, event.who.role, "Ask the lead to write it.");
  const all = target ? subjectsOf(target as Pick<LogEvent, "kind" | "version" | "payload">) : []; // filed as it was read
  if (!all.every((subject) => about.includes(subject)))
    return stop(
      "half-a-correction",
      id,
      all.join(", "),
      "Name in it all that the entry is about, or it would still count there.",
    );
  return whyNotSaid(event, beside);
}
