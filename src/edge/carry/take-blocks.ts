import { gapless } from "../../core/log/carry-reach.ts";
import type { LogEvent } from "../../core/log/event.ts";
import { readEvent } from "../../core/log/read-event.ts";
import { tells, textsIn, toldBeyond } from "../../core/log/told-of-health.ts";
import { ULID } from "../../core/log/ulid.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { type Appended, type Keep, KeepFault } from "../keep/keep.ts";
import { linesIn } from "./blocks.ts";
import type { CarryFile } from "./carry-file.ts";
import { countNeither } from "./count-neither.ts";
import { linksIn } from "./links.ts";
import type { Manifest } from "./manifest.ts";

/** A line that was not taken, and what stands against it. */
export interface Aside {
  /** As it stood; where it may tell of somebody's health, no more than the code of the problem and the entry's id. */
  readonly line: string;
  readonly problem: Problem;
}

export interface Taken {
  readonly added: number;
  /** Entries that were here already. */
  readonly known: number;
  readonly aside: readonly Aside[];
  /** What was taken and must be looked at, what is missing, what stopped it. */
  readonly problems: readonly Problem[];
}

/** Takes each block in one transaction. What stops it leaves whole blocks behind; the same file again goes on from there.
 *  @param now milliseconds since 1970 */
export async function takeBlocks(
  { manifest, blocks }: CarryFile,
  keep: Keep,
  file: string,
  now = Date.now(),
): Promise<Taken> {
  let [added, known] = [0, 0];
  const aside: Aside[] = [];
  const problems: Problem[] = [];
  const twins: LogEvent[] = [];
  try {
    for (const body of blocks) {
      const read = entriesOf(linesIn(body) ?? [""], manifest.campaign);
      const taken = await take(read.entries, keep);
      added += taken.answer.added;
      known += taken.answer.known;
      aside.push(...read.aside, ...taken.aside);
      twins.push(...taken.twins);
      problems.push(...taken.answer.noted);
    }
    problems.push(...(await countNeither(keep, manifest.campaign, twins, now)));
    if (!manifest.all && blocks.length === manifest.blocks.length)
      problems.push(...(await missing(keep, manifest, file)));
  } catch (error) {
    if (!(error instanceof KeepFault)) throw error;
    problems.push(error.problem);
  }
  return { added, known, aside, problems };
}

interface Entry {
  readonly line: string;
  /** Not judged yet: the keep does it. */
  readonly event: LogEvent;
}

function entriesOf(
  lines: readonly string[],
  campaign: string,
): { readonly entries: Entry[]; readonly aside: Aside[] } {
  const entries: Entry[] = [];
  const aside: Aside[] = [];
  for (const line of lines) {
    const given = jsonIn(line) as LogEvent | null;
    if (given !== null && toldBeyond(given)) aside.push(setAside(line, given, ofHealth(given)));
    else if (typeof given?.campaign === "string" && given.campaign !== campaign)
      aside.push(setAside(line, given, ofAnother(given, campaign)));
    else entries.push({ line, event: given as LogEvent });
  }
  return { entries, aside };
}

/** What is not taken lies about as a file that anybody opens, so words of health are not written there. */
function setAside(line: string, given: LogEvent | null, problem: Problem): Aside {
  if (!tells([line, ...textsIn(given)])) return { line, problem };
  return { line: JSON.stringify({ id: idOf(given), problem: problem.code }), problem };
}

const idOf = (given: LogEvent | null): string => (ULID.test(String(given?.id)) ? String(given?.id) : "no id");

function jsonIn(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}

/** Takes what can be taken, all of it in one transaction. */
async function take(
  entries: readonly Entry[],
  keep: Keep,
): Promise<{
  readonly answer: Appended;
  readonly aside: readonly Aside[];
  /** Those set aside since another has their id. */
  readonly twins: readonly LogEvent[];
}> {
  let left = entries;
  const aside: Aside[] = [];
  const twins: LogEvent[] = [];
  for (;;) {
    const answer = await keep.append(left.map(({ event }) => event));
    const [first] = answer.refused;
    if (first === undefined) return { answer, aside, twins };
    if (first.code.startsWith("keep-")) throw new KeepFault(first, null); // of the place, not of an entry
    const taken = new Set(refusedIds(answer.refused));
    const judged = left.map((entry, at) => ({
      ...entry,
      problem: against(entry.event, left.slice(at + 1), taken),
    }));
    aside.push(
      ...judged.flatMap(({ line, event, problem }) => (problem ? [setAside(line, event, problem)] : [])),
    );
    twins.push(...judged.flatMap(({ event, problem }) => (problem?.code === "event-twice" ? [event] : [])));
    const good = judged.filter(({ problem }) => problem === null);
    if (good.length === left.length) throw new Error(`Refused for no entry of its own: ${first.code}.`);
    left = good;
  }
}

/** Ids under which another entry is kept. */
const refusedIds = (refused: readonly Problem[]): string[] =>
  refused.flatMap(({ code, got }) => (code === "event-twice" && got !== undefined ? [got] : []));

/** What stands against an entry. Where several of a block have one id that is taken, the last goes first. */
function against(event: LogEvent, after: readonly Entry[], taken: ReadonlySet<string>): Problem | null {
  const read = readEvent(event);
  if (!read.ok) return read.problems[0] ?? null;
  const isLast = taken.has(event.id) && !after.some((other) => other.event.id === event.id);
  return isLast ? idTaken(event) : null;
}

/** What the writer thought we had, and we have not: a log brought back from an older backup. */
async function missing(keep: Keep, { campaign, reach }: Manifest, file: string): Promise<Problem[]> {
  const { links } = await linksIn(keep, campaign);
  const here = gapless(links);
  return reach.flatMap(({ device, number }) => {
    const got = here.get(device) ?? 0;
    return got < number ? [entriesMissing(device, got + 1, number, file)] : [];
  });
}

const idTaken = ({ id, device }: LogEvent): Problem => ({
  code: "event-twice",
  severity: "ask",
  got: id,
  expected: device,
  remedy:
    "Neither counts from now on, here and wherever this log is carried; this one was set aside. Look on that device what was written, and write it again as a new entry.",
});

const ofHealth = (given: LogEvent): Problem => ({
  code: "health-words",
  severity: "ask",
  got: idOf(given),
  remedy: `It was set aside (${idOf(given)}), and its words are not kept here. Have the device that wrote it leave out whatever is about anybody's health, and write it again.`,
});

const ofAnother = ({ id, campaign }: LogEvent, expected: string): Problem => ({
  code: "carry-entry-of-another",
  severity: "ask",
  got: campaign,
  expected,
  remedy: `It was set aside (${id}). Tell whoever wrote the file: their log holds what is not of this campaign.`,
});

const entriesMissing = (device: string, from: number, to: number, file: string): Problem => ({
  code: "carry-entries-missing",
  severity: "ask",
  file,
  got: device,
  expected: from === to ? `number ${from}` : `some of the numbers ${from} to ${to}`,
  remedy:
    "The file leaves out what you were thought to have. Ask for everything: npx leafward carry out there, without --for.",
});
