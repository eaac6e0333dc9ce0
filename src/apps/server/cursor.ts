import { z } from "zod";
import type { Placed } from "../../edge/keep/keep.ts";
import type { LogDesk } from "../../edge/serve/log-desk.ts";
import { type Refusal, refusal } from "./answers.ts";

const MARK_LETTERS = 12;

/** How far somebody has read: a place, and how the hash of the entry there begins. Without that the place is taken on trust. */
export const cursorSchema = z
  .string()
  .regex(/^\d{1,15}(?:-[0-9a-f]{12})?$/)
  .describe("0, or the id of the last message that was had");

export const cursorOf = ({ place, event }: Placed): string => `${place}-${event.hash.slice(0, MARK_LETTERS)}`;

export const placeOf = (cursor: string): number => Number.parseInt(cursor, 10);

/** The cursor of somebody who has all up to a place of this log. */
export async function cursorAt(desk: LogDesk, place: number): Promise<string> {
  const [there] = place === 0 ? [] : await desk.after(place - 1, 1);
  return there ? cursorOf(there) : "0";
}

/** After a backup was put back other entries may stand at the places a device has read: it would pass them over, and never send its own again. */
export async function beyondTheLog(desk: LogDesk, cursor: string): Promise<Refusal | null> {
  const place = placeOf(cursor);
  if (place === 0) return null;
  const [there] = await desk.after(place - 1, 1); // the entry at the place, or else the next
  if (there && (cursor === String(place) || cursor === cursorOf(there))) return null;
  return refusal(
    "beyond-the-log",
    cursor,
    "a place that this log has, with the entry that was read there",
    "The log was put back from a backup. Take the state again, and send every entry of this device again.",
  );
}
