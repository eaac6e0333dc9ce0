import { lazy } from "react";
import type { RoomProps } from "../walls/where.ts";
import { DoorFloor } from "./door-floor.tsx";

const ItemScreen = lazy(async () => ({ default: (await import("./item-screen.tsx")).ItemScreen }));
const ListingScreen = lazy(async () => ({ default: (await import("./listing-screen.tsx")).ListingScreen }));
const TagsScreen = lazy(async () => ({ default: (await import("./tags-screen.tsx")).TagsScreen }));

/** The Door: who waits, one item, its listing, tags. */
export function DoorRoom({ open: [screen, id] }: RoomProps) {
  if (screen === "item" && id !== undefined) return <ItemScreen key={id} id={id} />;
  if (screen === "list" && id !== undefined) return <ListingScreen key={id} id={id} />;
  if (screen === "tags") return <TagsScreen />;
  return <DoorFloor />;
}
