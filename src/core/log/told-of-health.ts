import type { LogEvent } from "./event.ts";
import { healthWords, healthWordsInName } from "./health-words.ts";
import { ULID } from "./ulid.ts";

/** Words about things, which may well speak of illness: a hospital's register, a store of medical masks. They are not searched. */
export const ABOUT_THINGS: Readonly<Record<string, readonly string[]>> = {
  campaignFounded: ["name", "place", "limits"],
  settingsChanged: ["name"],
  placeChanged: ["place"],
  limitsChanged: ["limits"],
  itemListed: ["title", "facts", "foundIn", "custodianRule"],
  partListed: ["facts"],
  storeListed: ["name", "unit"],
};

/**
 * Whether anything in an event that came from outside may tell of somebody's health: every text and every name of a field, codes and tags among them,
 * but for words about things. Wider than what is searched on writing, since whatever can send an event need not be ours.
 */
export function toldOfHealth({ kind, device, who, payload }: LogEvent): boolean {
  const isPerson = kind === "personListed";
  const passed = [...(ABOUT_THINGS[kind] ?? []), ...(isPerson ? ["name"] : [])];
  const texts = Object.entries(payload).flatMap(([field, value]) =>
    passed.includes(field) ? namesIn(value) : [field, ...textsIn(value)],
  );
  return (
    [device, ...textsIn(who), ...texts].some((text) => !ULID.test(text) && healthWords(text).length > 0) ||
    (isPerson && healthWordsInName(String(payload.name)).length > 0)
  );
}

const partsOf = (value: unknown): [name: string, part: unknown][] =>
  typeof value === "object" && value !== null ? Object.entries(value) : [];

/** Every name of a field inside a value. */
const namesIn = (value: unknown): string[] =>
  partsOf(value).flatMap(([name, part]) => [name, ...namesIn(part)]);

/** The same, and every text. */
const textsIn = (value: unknown): string[] =>
  typeof value === "string" ? [value] : partsOf(value).flatMap(([name, part]) => [name, ...textsIn(part)]);
