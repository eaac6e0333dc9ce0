import type { CalendarEntry, Campaign, Finding, Item, Store, WardNote } from "../items/campaign.ts";
import type { Day } from "../units/day.ts";
import type { Kind } from "./kinds.ts";

/** One thing to write down. Its payload is held against the schema of its kind when it is written. */
export interface ImportEntry {
  readonly kind: Kind;
  readonly payload: object;
  /** The same without words of somebody's own, should these be refused. */
  readonly plain?: object;
  /** A finding: what it answers, and on which day; a later day's answer was given by people who had the earlier one. */
  readonly answers?: { readonly key: string; readonly day: Day | undefined };
  /** What it replaces in a log that was there before. */
  readonly seen?: readonly string[];
}

const READINGS_A_BATCH = 1000;

/** A campaign as things to write down, each after what it speaks of. */
export function* importEntries(campaign: Campaign): Generator<ImportEntry> {
  const { name, start, end, wardLitres, place, limits, stations } = campaign;
  yield { kind: "campaignFounded", payload: { name, start, end, wardLitres, place, limits, stations } };
  for (const item of campaign.items) yield* itemEntries(item);
  for (const finding of inDayOrder(campaign.findings))
    yield {
      kind: "findingRecorded",
      payload: finding,
      answers: { key: keyOf(finding), day: finding.day },
    };
  for (const { code: person, ...rest } of campaign.people)
    yield { kind: "personListed", payload: { person, ...rest }, plain: { person, ...rest, name: person } };
  const codes = new Set(campaign.people.map(({ code }) => code));
  for (const entry of campaign.calendar) yield calendarEntry(entry, codes.has(entry.who));
  for (const store of campaign.stores) yield* storeEntries(store, countedOn(campaign, store));
  for (const [index, { note, ...delivery }] of campaign.deliveries.entries())
    yield noted("deliveryExpected", { ...delivery, delivery: `${index + 1}` }, note);
  for (const session of campaign.sessions) yield { kind: "actCopied", payload: session };
  for (const note of campaign.ward) yield wardEntry(note);
  for (const { name: reader, readings } of campaign.climate)
    for (let at = 0; at < readings.length; at += READINGS_A_BATCH)
      yield { kind: "readerRead", payload: { reader, readings: readings.slice(at, at + READINGS_A_BATCH) } };
}

const noted = (kind: Kind, plain: object, note: string | undefined): ImportEntry =>
  note === undefined ? { kind, payload: plain } : { kind, payload: { ...plain, note }, plain };

function* itemEntries({ id: item, parts, state: _, ...rest }: Item): Generator<ImportEntry> {
  yield { kind: "itemListed", payload: { item, ...rest } };
  for (const { name: part, facts } of parts) yield { kind: "partListed", payload: { item, part, facts } };
}

const countedOn = ({ stockCounts, planFrom }: Campaign, { id }: Store): Day =>
  stockCounts?.findLast(({ store }) => store === id)?.day ?? planFrom;

function* storeEntries({ id: store, onHand, ...rest }: Store, day: Day): Generator<ImportEntry> {
  yield { kind: "storeListed", payload: { store, ...rest } };
  yield { kind: "stockCounted", payload: { store, day, quantity: onHand } };
}

/** Of a person the days are taken over and nothing else. */
function calendarEntry(entry: CalendarEntry, isPerson: boolean): ImportEntry {
  const { note, ...plain } = entry;
  if (!isPerson || entry.what === "open") return noted("calendarChanged", plain, isPerson ? undefined : note);
  const { who: person, from, to, what, hours } = entry;
  if (what === "hours") return { kind: "personHours", payload: { person, from, to, hours } };
  return { kind: what === "clean work" ? "cleanWorkThisWeek" : "personAway", payload: { person, from, to } };
}

/** In a table a bag has no name of its own: it is called as the item in it. */
function wardEntry({ item, day, minute, what, value, dryBulb }: WardNote): ImportEntry {
  const air = dryBulb === undefined ? {} : { dryBulb };
  const inBag = { bag: item, items: [item], day, minute, ...air };
  const valued = (name: string) => (value === undefined ? {} : { [name]: value });
  switch (what) {
    case "closed":
      return { kind: "bagClosed", payload: { ...inBag, ...valued("litres") } };
    case "opened":
      return { kind: "bagOpened", payload: inBag };
    case "read":
      return { kind: "bagRead", payload: { ...inBag, ...valued("relHum") } };
    case "weighed":
      return { kind: "bagWeighed", payload: { item, day, minute, ...air, ...valued("grams") } };
    case "gel in":
    case "gel out":
      return {
        kind: "gelChanged",
        payload: { ...inBag, way: what === "gel in" ? "in" : "out", ...valued("grams") },
      };
  }
}

const keyOf = ({ item, part, test }: Finding): string => [item, part, test].join("\u0000");

/** The same findings, those that answer the same question in the order of their days. */
function inDayOrder(findings: readonly Finding[]): Finding[] {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const group = groups.get(keyOf(finding));
    if (group) group.push(finding);
    else groups.set(keyOf(finding), [finding]);
  }
  for (const group of groups.values())
    if (group.length > 1)
      group.sort((a, b) => Number((a.day ?? "") > (b.day ?? "")) - Number((a.day ?? "") < (b.day ?? "")));
  const next = new Map([...groups].map(([key, group]) => [key, group.values()]));
  return findings.map((finding) => next.get(keyOf(finding))?.next().value ?? finding);
}
