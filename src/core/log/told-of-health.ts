import { MOST_DEPTH } from "./canonical-json.ts";
import type { LogEvent } from "./event.ts";
import { healthWords, healthWordsInName } from "./health-words.ts";
import { kindOf } from "./kinds.ts";

/** Words about things, which may well speak of illness: a hospital's register, a store of medical masks, the number `ILL-12`. They are not searched. */
export const ABOUT_THINGS: Readonly<Record<string, readonly string[]>> = {
  campaignFounded: ["name", "place", "limits"],
  settingsChanged: ["name"],
  placeChanged: ["place"],
  limitsChanged: ["limits"],
  itemListed: ["item", "title", "facts", "foundIn", "custodianRule"],
  partListed: ["item", "part", "facts"],
  storeListed: ["store", "name", "unit"],
  eventCorrected: ["event"],
};

/** Fields that hold numbers and names of things. What is known under such a one here is not searched again. */
const NAME_THINGS = new Set("item items part bag box shelf station store reader about".split(" "));
/** What an event is filed under: `item:ILL-12`. A person is searched always. */
const ON_A_SHELF = /^(?:item|bag|station|store|reader):/;

/**
 * Whether anything in an event that came from outside may tell of somebody's health: every text and every name of a field, codes and tags among them,
 * but for words about things. Wider than what is searched on writing, since whatever can send an event need not be ours.
 * @param isThing whether a thing is known under a number or name
 */
export function toldOfHealth(
  { kind, device, who, payload }: LogEvent,
  isThing: (name: string) => boolean,
): boolean {
  const isPerson = kind === "personListed";
  const passed = [
    ...(Object.hasOwn(ABOUT_THINGS, kind) ? (ABOUT_THINGS[kind] ?? []) : []),
    ...(isPerson ? ["name"] : []),
  ];
  const texts = Object.entries(payload).flatMap(([field, value]) => {
    if (passed.includes(field)) return namesIn(value);
    if (!NAME_THINGS.has(field)) return [field, ...textsIn(value)];
    return textsIn(value).filter((text) => tells([text]) && !isThing(text.replace(ON_A_SHELF, "")));
  });
  return (
    tells([device, ...textsIn(who), ...texts]) ||
    (isPerson && healthWordsInName(String(payload.name)).length > 0)
  );
}

/**
 * Whether what this Leafward has no place for may tell of somebody's health: a kind or version that is not known here, as a whole, and fields beside
 * those that every event has. What a newer version writes is kept and passed on, but never a reason about a person.
 * @param event need not be one: whatever a file holds
 */
export function toldBeyond(event: LogEvent): boolean {
  const isKnown = kindOf(event.kind, event.version) !== null;
  return tells(textsIn(isKnown ? beyond(event) : { ...event, ...CHANCE, campaign: "" }));
}

/** Ids may by chance spell anything. */
const CHANCE = { id: "", seen: [] };

const ENVELOPE = "id campaign device number clock who kind version payload seen before hash".split(" ");

/** Fields of an event, its clock and its writer that this Leafward does not know, with what they hold. */
export const beyond = (event: LogEvent): readonly (readonly [name: string, value: unknown])[] => [
  ...without(event, ENVELOPE),
  ...without(event.clock, ["wall", "counter"]),
  ...without(event.who, ["role", "person"]),
];

const without = (value: unknown, known: readonly string[]): [name: string, part: unknown][] =>
  partsOf(value).filter(([name]) => !known.includes(name));

/** Whether any of some texts may tell of somebody's health. */
export const tells = (texts: readonly string[]): boolean =>
  [...new Set(texts)].some((text) => healthWords(text).length > 0);

const partsOf = (value: unknown): [name: string, part: unknown][] =>
  typeof value === "object" && value !== null ? Object.entries(value) : [];

/** Every name of a field inside a value. */
const namesIn = (value: unknown): string[] =>
  partsOf(value).flatMap(([name, part]) => [name, ...namesIn(part)]);

/** The same, and every text; not deeper than an event may go. */
export const textsIn = (value: unknown, depth = 0): string[] => {
  if (typeof value === "string") return [value];
  if (depth > MOST_DEPTH) return [];
  return partsOf(value).flatMap(([name, part]) => [name, ...textsIn(part, depth + 1)]);
};
