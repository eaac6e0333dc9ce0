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
  switch (event.kind) {
    case "actDone":
    case "actCopied":
      return event.payload.act;
    case "coversPictured":
      return "covers";
    case "itemWrapped":
      return "wrap";
    case "itemBoxed":
      return "box";
    case "itemReleased":
      return "release";
    default:
      return null;
  }
}

/** What was written about the item in its bag, in the order of the log. */
export const wardNotesIn = ({ counted }: Standing, item: string): From<WardNote>[] =>
  counted.flatMap((event) => {
    const note = noteOf(event);
    return note === null ? [] : [{ event, value: { item, ...note } }];
  });

function noteOf(event: Filed): Omit<WardNote, "item"> | null {
  switch (event.kind) {
    case "bagClosed":
      return { ...atOf(event), what: "closed", ...valued(event.payload.litres) };
    case "bagOpened":
      return { ...atOf(event), what: "opened" };
    case "bagRead":
      return { ...atOf(event), what: "read", value: event.payload.relHum };
    case "bagWeighed":
      return { ...atOf(event), what: "weighed", value: event.payload.grams };
    case "gelChanged":
      return {
        ...atOf(event),
        what: event.payload.way === "in" ? "gel in" : "gel out",
        ...valued(event.payload.grams),
      };
    default:
      return null;
  }
}

type OfBag = Filed<"bagClosed" | "bagOpened" | "bagRead" | "bagWeighed" | "gelChanged">;
const atOf = ({ payload: { day, minute, dryBulb } }: OfBag) => ({
  day,
  minute,
  ...(dryBulb === undefined ? {} : { dryBulb }),
});

const valued = (value: number | undefined): { readonly value?: number } =>
  value === undefined ? {} : { value };

/** Where the item was last put; null: nobody wrote it down. */
export function placeIn({ matters }: Standing): Payload<"itemMoved"> | null {
  const moved = matters.get("place")?.standing.findLast((each) => isOf(each, "itemMoved"));
  return moved?.payload ?? null;
}
