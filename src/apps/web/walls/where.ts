import { useSyncExternalStore } from "react";
import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";

export type RoomName = keyof typeof ROOM_NAMES;

/** Where somebody is: a room, and what is open in it. Written as `#/ward/bag/B-3`. */
export interface Where {
  readonly room: RoomName;
  readonly open: readonly string[];
}

/** What a room is given: what is open in it, as its address says. */
export interface RoomProps {
  readonly open: Where["open"];
}

const LAST = "leafward where";

export function whereOf(hash: string): Where {
  const [, room = "", ...open] = hash.replace(/^#/, "").split("/");
  return {
    room: Object.hasOwn(ROOM_NAMES, room) ? (room as RoomName) : "today", // just looked up
    open: open.filter((each) => each !== "").map(decoded),
  };
}

/** A link that somebody cut is still a link. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** The link to a place in a room. */
export const linkTo = (room: RoomName, ...open: readonly string[]): string =>
  `#/${[room, ...open.map(encodeURIComponent)].join("/")}`;

export function goTo(room: RoomName, ...open: readonly string[]): void {
  location.hash = linkTo(room, ...open);
}

/** Where somebody is now; remembered, so that a reload or a crash comes back to it. */
export function useWhere(): Where {
  return whereOf(useSyncExternalStore(onMove, () => location.hash));
}

function onMove(moved: () => void): () => void {
  const hear = (): void => {
    if (location.hash.startsWith("#/")) localStorage.setItem(LAST, location.hash);
    moved();
  };
  addEventListener("hashchange", hear);
  return () => removeEventListener("hashchange", hear);
}

/** Goes where this device was last, unless its address says where. */
export function comeBack(): void {
  if (location.hash.startsWith("#/")) return;
  const last = localStorage.getItem(LAST);
  if (last !== null) history.replaceState(null, "", last);
}
