import type { Destiny } from "../../../core/care/care.ts";
import type { Act, Item } from "../../../core/items/campaign.ts";
import type { Day } from "../../../core/units/day.ts";
import type { ItemNow } from "./item-now.ts";

export type FloorRoom = "door" | "ward" | "bench" | "camera" | "shelf";

/** An item in a list: little enough to keep of every item, enough to sort, filter and count by. */
export interface ItemRow {
  readonly id: string;
  readonly title: string;
  readonly format: string;
  readonly priority: Item["priority"];
  readonly due: Day | null;
  /** Where it stands: where it was last put, else where its way stands. */
  readonly room: FloorRoom;
  readonly destiny: Destiny;
  /** The act that comes next; null: none. */
  readonly next: Act | null;
  readonly done: readonly Act[];
  readonly conditions: readonly string[];
  /** Where it was last put; empty: nobody wrote it down. */
  readonly bag: string;
  readonly shelf: string;
  /** Days since it came into the Ward; null: not in it. */
  readonly wardDays: number | null;
  /** Answers that contradict and wait to be settled. */
  readonly disagreements: number;
}

const ROOM_OF: Readonly<Record<Act, FloorRoom>> = {
  survey: "door",
  admit: "ward",
  release: "ward",
  covers: "camera",
  wrap: "bench",
  clean: "bench",
  image: "camera",
  box: "shelf",
};
export const roomOfAct = (act: Act): FloorRoom => ROOM_OF[act];

export const rowOf = (now: ItemNow): ItemRow => ({
  id: now.item.id,
  title: now.item.title,
  format: String(now.item.facts.format ?? ""),
  priority: now.item.priority,
  due: now.item.due ?? null,
  room: roomOf(now),
  destiny: now.route.destiny,
  next: now.route.steps[0]?.act ?? null,
  done: [...now.care.done],
  conditions: now.route.conditions,
  bag: now.place?.bag ?? "",
  shelf: now.place?.shelf ?? "",
  wardDays: now.history.wardDays,
  disagreements: now.disagreements.length,
});

function roomOf({ place, route, history }: ItemNow): FloorRoom {
  if (route.destiny === "done") return "shelf";
  if (place !== null) return place.room.toLowerCase() as FloorRoom; // the rooms' own names
  if (history.wardDays !== null) return "ward";
  const [next] = route.steps;
  return next === undefined || route.destiny === "at the Door" || next.act === "admit"
    ? "door"
    : ROOM_OF[next.act];
}
