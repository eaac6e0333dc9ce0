import type { LogEvent } from "../../../src/core/log/event.ts";
import { diskFull } from "../../../src/edge/keep/failures.ts";
import { chainNotes, faultsOf, idTaken, wentOn } from "../../../src/edge/keep/judge.ts";
import type { Appended, Keep, KeptSnapshot, Placed } from "../../../src/edge/keep/keep.ts";

/** A keep as long as the program runs, and quick: what a keep does, without the disk.   @param room for so many events */
export function memoryKeep(room = Number.POSITIVE_INFINITY): Keep {
  const rows: LogEvent[] = [];
  const hashes = new Map<string, string>();
  const snapshots = new Map<string, KeptSnapshot>();
  const keyOf = ({ campaign, id }: LogEvent): string => `${id} ${campaign}`;
  const none: Omit<Appended, "place"> = { added: 0, known: 0, refused: [], noted: [] };

  async function append(events: readonly LogEvent[], last = rows.length): Promise<Appended> {
    if (rows.slice(last).some(({ campaign }) => campaign === events[0]?.campaign))
      return { ...none, refused: [wentOn("memory")], place: rows.length };
    const faults = events.flatMap(faultsOf);
    if (faults.length > 0) return { ...none, refused: faults, place: rows.length };
    const seen = new Map(hashes);
    const fresh = events.filter((event) => {
      const isNew = !seen.has(keyOf(event));
      if (isNew) seen.set(keyOf(event), event.hash);
      return isNew;
    });
    const clashes = events.filter((event) => seen.get(keyOf(event)) !== event.hash);
    if (clashes.length > 0) return { ...none, refused: clashes.map(idTaken), place: rows.length };
    if (rows.length + fresh.length > room)
      return { ...none, refused: [diskFull("memory")], place: rows.length };
    for (const event of fresh) {
      rows.push(structuredClone(event));
      hashes.set(keyOf(event), event.hash);
    }
    const known = events.length - fresh.length;
    return { added: fresh.length, known, refused: [], noted: notesOn(rows, fresh), place: rows.length };
  }

  return {
    where: "memory",
    shut: null,
    append,
    after: async (campaign, place, most) =>
      rows
        .map((event, at): Placed => ({ place: at + 1, event }))
        .filter((each) => each.place > place && each.event.campaign === campaign)
        .slice(0, most),
    campaigns: async () => [...new Set(rows.map(({ campaign }) => campaign))].sort(),
    snapshot: async (campaign) => snapshots.get(campaign) ?? null,
    saveSnapshot: async (campaign, place, bytes) => {
      snapshots.set(campaign, { place, bytes });
    },
    close: async () => {},
  };
}

function notesOn(rows: readonly LogEvent[], fresh: readonly LogEvent[]) {
  const chains = new Set(fresh.map(({ campaign, device }) => `${device} ${campaign}`));
  return [...chains].flatMap((chain) => {
    const isOfIt = ({ campaign, device }: LogEvent): boolean => `${device} ${campaign}` === chain;
    const here = new Map<number, string[]>();
    for (const { number, hash } of rows.filter(isOfIt)) here.set(number, [...(here.get(number) ?? []), hash]);
    return chainNotes(fresh.filter(isOfIt), here);
  });
}
