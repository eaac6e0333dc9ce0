import type { Act, Item, Part, Session, WardNote } from "../items/campaign.ts";
import { type From } from "./findings-now.ts";
import type { Filed, Payload } from "./kinds.ts";
import { isOf, type Standing } from "./standing.ts";

/** The item as it was last listed, with its parts; null where it was never listed. */
export function itemIn({ counted, matters }: Standing): From<Item> | null {
  const event = counted.find((each) => isOf(each, "itemListed"));
  const listed = matters.get("listing")?.standing.findLast((each) => isOf(each, "itemListed"));
  if (event === undefined || listed === undefined) return null;
  const { item: id, ...rest } = listed.payload;
  return { event, value: { id, ...rest, parts: partsIn(matters) } };
}

function partsIn(matters: Standing["matters"]): Part[] {
  const parts: Part[] = [];
  for (const { standing } of matters.values()) {
    const part = standing.findLast((each) => isOf(each, "partListed"));
    if (part !== undefined) parts.push({ name: part.payload.part, facts: part.payload.facts });
  }
  return parts;
}

/** Work done on the item, in the order of the log. */
export const sessionsIn = ({ counted }: Standing): From<Session>[] =>
  counted.flatMap((event) => {
    const act = actOf(event);
    if (act === null || !("person" in event.payload) || !("exposed" in event.payload)) return [];
    const { day, item, person, minutes, exposed } = event.payload as Payload<"actCopied">; // every act has these
    return [{ event, value: { day, item, act, person, minutes, exposed } }];
  });

function actOf(event: Filed): Act | null {
  if (isOf(event, "actDone", "actCopied")) return event.payload.act;
  if (isOf(event, "coversPictured")) return "covers";
  if (isOf(event, "itemWrapped")) return "wrap";
  if (isOf(event, "itemBoxed")) return "box";
  return isOf(event, "itemReleased") ? "release" : null;
}

/** What was written about the item in its bag, in the order of the log. */
export const wardNotesIn = ({ counted }: Standing, item: string): From<WardNote>[] =>
  counted.flatMap((event) => {
    const note = noteOf(event);
    return note === null ? [] : [{ event, value: { item, ...note } }];
  });

function noteOf(event: Filed): Omit<WardNote, "item"> | null {
  if (!isOf(event, "bagClosed", "bagOpened", "bagRead", "bagWeighed", "gelChanged")) return null;
  const { day, minute, dryBulb } = event.payload;
  const at = { day, minute, ...(dryBulb === undefined ? {} : { dryBulb }) };
  if (isOf(event, "bagClosed")) return { ...at, what: "closed", ...valued(event.payload.litres) };
  if (isOf(event, "bagRead")) return { ...at, what: "read", value: event.payload.relHum };
  if (isOf(event, "bagWeighed")) return { ...at, what: "weighed", value: event.payload.grams };
  if (isOf(event, "gelChanged"))
    return { ...at, what: event.payload.way === "in" ? "gel in" : "gel out", ...valued(event.payload.grams) };
  return { ...at, what: "opened" };
}

const valued = (value: number | undefined): { readonly value?: number } =>
  value === undefined ? {} : { value };

/** Where the item was last put; null: nobody wrote it down. */
export function placeIn({ matters }: Standing): Payload<"itemMoved"> | null {
  const moved = matters.get("place")?.standing.findLast((each) => isOf(each, "itemMoved"));
  return moved?.payload ?? null;
}
