import type { Campaign, Finding } from "../../core/items/campaign.ts";
import { canonicalJson, type Json } from "../../core/log/canonical-json.ts";
import type { LogEvent } from "../../core/log/event.ts";
import { type ImportEntry, importEntries } from "../../core/log/import-entries.ts";
import { kindOf } from "../../core/log/kinds.ts";
import { correctionOf } from "../../core/log/subjects.ts";

/** Every taking in of sheets writes as a device of its own, so that two copies of a folder never go on from the same entry. */
const SHEETS = "sheets-";
export const sheetsDevice = (chance: Uint8Array): string => `${SHEETS}${Buffer.from(chance).toString("hex")}`;
export const isOfSheets = ({ device }: { readonly device: string }): boolean => device.startsWith(SHEETS);

/** What the sheets say otherwise than when they were last taken in. */
export interface SheetChanges {
  /** To be written so that the log says it too: first what no longer stands, then what is new. */
  readonly entries: readonly ImportEntry[];
  readonly fresh: number;
  /** Entries whose row is gone; a row that was changed is gone and fresh. */
  readonly gone: number;
}

/**
 * Compares the sheets with what was taken from them, and with nothing else: what others wrote into the log stays as it is.
 * @param events the whole log of the campaign
 */
export function sheetChanges(events: readonly LogEvent[], campaign: Campaign): SheetChanges {
  const own = events.filter(isOfSheets);
  const corrected = new Set(
    own.flatMap(({ kind, payload }) => (kind === "eventCorrected" ? [payload.event] : [])),
  );
  const live = own.filter((event) => !corrected.has(event.id) && isRow(event));
  const rows = new Map<string, LogEvent[]>();
  const counted = new Map((campaign.stockCounts ?? []).map(({ store, day }) => [store, day]));
  for (const event of live) {
    const key = keyOf(event, counted);
    rows.set(key, [...(rows.get(key) ?? []), event]);
  }
  const readings = readingsIn(events);
  const fresh: ImportEntry[] = [];
  for (const entry of importEntries(campaign)) {
    if (entry.kind === "campaignFounded") fresh.push(...houseChanges(own, entry));
    else if (entry.kind === "readerRead") fresh.push(...newReadings(readings, entry));
    else if (!taken(rows, entry, counted)) fresh.push(entry);
  }
  const gone = [...rows.values()].flat().filter((event) => !isOlderCount(event, counted));
  const left = new Set(gone);
  const answers = live.filter((event) => event.kind === "findingRecorded" && !left.has(event));
  const corrections = gone.map(
    (event): ImportEntry => ({ kind: "eventCorrected", payload: correctionOf(event) }),
  );
  return {
    entries: [...corrections, ...fresh.map((entry) => afterEarlier(entry, answers))],
    fresh: fresh.length,
    gone: gone.length,
  };
}

/** The house and its readers are compared by what they say, not row by row; what a newer Leafward took in stands. */
const isRow = ({ kind, version }: LogEvent): boolean =>
  kindOf(kind, version) !== null &&
  kind !== "eventCorrected" &&
  kind !== "readerRead" &&
  !(kind in ASPECTS) &&
  kind !== "campaignFounded";

/** Store → the day it was counted on, as the sheets say it. */
type Counted = ReadonlyMap<string, string>;
const NONE: Counted = new Map();

/** A count of stock without a day is the same on whatever morning the sheets are read. */
function keyOf(
  { kind, payload }: { readonly kind: string; readonly payload: object },
  counted: Counted,
): string {
  const { day, ...rest } = payload as { readonly [key: string]: Json }; // what is written or was read as JSON
  const isUndated = kind === "stockCounted" && !counted.has(String(rest.store));
  return `${kind} ${canonicalJson(isUndated || day === undefined ? rest : { ...rest, day })}`;
}

/** A later count leaves the one before it as it was: between the two the team's own use is measured. */
const isOlderCount = ({ kind, payload }: LogEvent, counted: Counted): boolean =>
  kind === "stockCounted" && String(payload.day) < (counted.get(String(payload.store)) ?? "");

/** Strikes off the row an entry stands for. Rows that are the same stand for one entry each. */
function taken(
  rows: Map<string, LogEvent[]>,
  { kind, payload, plain }: ImportEntry,
  counted: Counted,
): boolean {
  for (const each of plain === undefined ? [payload] : [payload, plain]) {
    const key = keyOf({ kind, payload: each }, counted);
    const [first, ...rest] = rows.get(key) ?? [];
    if (first === undefined) continue;
    if (rest.length > 0) rows.set(key, rest);
    else rows.delete(key);
    return true;
  }
  return false;
}

const ASPECTS = {
  settingsChanged: ["name", "start", "end", "wardLitres"],
  placeChanged: ["place"],
  limitsChanged: ["limits"],
  stationsChanged: ["stations"],
} as const;

/** A campaign is founded once; what changes of it later is said by itself. */
function houseChanges(own: readonly LogEvent[], founding: ImportEntry): ImportEntry[] {
  if (!own.some(({ kind }) => kind === "campaignFounded")) return [founding];
  return (Object.keys(ASPECTS) as (keyof typeof ASPECTS)[]).flatMap((kind) => {
    const of = (payload: object) =>
      Object.fromEntries(Object.entries(payload).filter(([key]) => ASPECTS[kind].includes(key as never)));
    const last = own.findLast((event) => event.kind === kind || event.kind === "campaignFounded");
    const payload = of(founding.payload);
    return last && keyOf({ kind, payload: of(last.payload) }, NONE) === keyOf({ kind, payload }, NONE)
      ? []
      : [{ kind, payload, seen: last ? [last.id] : [] }];
  });
}

interface Read {
  readonly reader: string;
  readonly readings: readonly { readonly [key: string]: Json }[];
}

const readingKey = (reader: string, reading: Read["readings"][number]): string =>
  `${reader} ${canonicalJson(reading)}`;

function readingsIn(events: readonly LogEvent[]): ReadonlySet<string> {
  const known = new Set<string>();
  for (const { kind, payload } of events)
    if (kind === "readerRead") {
      const { reader, readings } = payload as unknown as Read; // the keep holds it to its schema
      for (const reading of readings) known.add(readingKey(reader, reading));
    }
  return known;
}

/** Readings are never taken back; a logger's file that has grown gives what is new in it. */
function newReadings(known: ReadonlySet<string>, { payload }: ImportEntry): ImportEntry[] {
  const { reader, readings } = payload as Read;
  const fresh = readings.filter((reading) => !known.has(readingKey(reader, reading)));
  return fresh.length === 0 ? [] : [{ kind: "readerRead", payload: { reader, readings: fresh } }];
}

/** A later day's answer was given by people who had the earlier one. */
function afterEarlier(entry: ImportEntry, answers: readonly LogEvent[]): ImportEntry {
  const day = entry.answers?.day;
  if (day === undefined) return entry;
  const { item, part, test } = entry.payload as Finding;
  const seen = answers.filter(({ payload }) => {
    const earlier = payload as unknown as Finding;
    return (
      earlier.item === item && earlier.part === part && earlier.test === test && (earlier.day ?? "") < day
    );
  });
  return { ...entry, seen: seen.map(({ id }) => id) };
}
