import type { Problem } from "../outcome/problem.ts";
import { hashOf, type LogEvent } from "./event.ts";
import { altered } from "./read-event.ts";

/** Whether each device's events follow one on the other, from its first, each as it was written. One problem for each break.
 *  @param isAsWritten left out: its hash is reckoned again */
export function verifyChain(events: Iterable<LogEvent>, isAsWritten = hasItsHash): Problem[] {
  const chains = new Map<string, LogEvent[]>();
  for (const event of events) {
    const chain = chains.get(event.device);
    if (chain) chain.push(event);
    else chains.set(event.device, [event]);
  }
  return [...chains.keys()].sort().flatMap((device) => breaksOf(chains.get(device) ?? [], isAsWritten));
}

const hasItsHash = (event: LogEvent): boolean => hashOf(event) === event.hash;

function breaksOf(chain: LogEvent[], isAsWritten: (event: LogEvent) => boolean): Problem[] {
  const problems: Problem[] = [];
  let last: LogEvent[] = [];
  for (const group of numbered(chain)) {
    const [first] = group;
    if (!first) continue;
    problems.push(...group.filter((event) => !isAsWritten(event)).map(altered));
    if (group.length > 1) problems.push(fork(first, group.length));
    const missing = first.number - (last[0]?.number ?? 0) - 1;
    const befores = last.length === 0 ? [""] : last.map(({ hash }) => hash);
    if (missing > 0) problems.push(gap(first, missing));
    else problems.push(...group.filter(({ before }) => !befores.includes(before)).map(torn));
    last = group;
  }
  return problems;
}

/** Events of one device by their number; more than one in a group is a fork. */
function numbered(chain: LogEvent[]): LogEvent[][] {
  const groups: LogEvent[][] = [];
  for (const event of chain.sort((a, b) => a.number - b.number || (a.id < b.id ? -1 : 1))) {
    const group = groups.at(-1);
    if (group?.[0]?.number === event.number) group.push(event);
    else groups.push([event]);
  }
  return groups;
}

const gap = ({ device, number }: LogEvent, missing: number): Problem => ({
  code: "chain-gap",
  severity: "ask",
  got: String(missing),
  expected: `number ${number} of ${device}`,
  remedy: "Take the log again from that device, or from a carry file or backup that has them.",
});

const fork = ({ device, number }: LogEvent, branches: number): Problem => ({
  code: "chain-fork",
  severity: "ask",
  got: `${branches} entries`,
  expected: `number ${number} of ${device}`,
  remedy:
    "Nothing was lost. Most likely a device went on from an old copy: give it a new device name before it writes again.",
});

const torn = ({ device, number }: LogEvent): Problem => ({
  code: "chain-torn",
  severity: "ask",
  got: `number ${number}`,
  expected: device,
  remedy: "The one before was changed or exchanged. Take the log again from that device, or from a copy.",
});
