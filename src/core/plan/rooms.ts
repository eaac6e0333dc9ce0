import type { Route } from "../care/care.ts";
import type { Act, Campaign } from "../items/campaign.ts";
import type { RoomCount } from "./plan.ts";
import type { Walk } from "./walk.ts";

const ROOM_OF_NEXT: Readonly<Record<Act, RoomCount["room"]>> = {
  survey: "Door",
  admit: "Door",
  release: "Ward",
  covers: "Camera",
  wrap: "Bench",
  clean: "Bench",
  image: "Camera",
  box: "Shelf",
};
const ROOM_OF_ACT: Readonly<Record<Act, RoomCount["room"]>> = { ...ROOM_OF_NEXT, admit: "Ward" };

/** How many items are in each room on the first morning, how many will still come, and what the room waits for. */
export function roomsOf(campaign: Campaign, routes: readonly Route[], plan: Walk): RoomCount[] {
  const names = ["Door", "Ward", "Bench", "Camera", "Shelf"] as const;
  const later = new Set(
    campaign.items.filter((item) => item.arrives && item.arrives > campaign.planFrom).map((item) => item.id),
  );
  const now = new Map<string, number>();
  const toCome = new Map<string, number>();
  const count = (map: Map<string, number>, room: string): void => {
    map.set(room, (map.get(room) ?? 0) + 1);
  };
  for (const route of routes) {
    const next = route.steps[0];
    const here =
      route.destiny === "done"
        ? "Shelf"
        : route.destiny !== "route" || !next
          ? "Door"
          : ROOM_OF_NEXT[next.act];
    if (!later.has(route.item)) count(now, here);
    else count(toCome, "Door");
    for (const room of new Set(route.steps.map((step) => ROOM_OF_ACT[step.act])))
      if (later.has(route.item) || room !== here) count(toCome, room);
  }
  return names.map((room) => ({
    room,
    now: now.get(room) ?? 0,
    toCome: toCome.get(room) ?? 0,
    wait: waitOf(room, routes, plan),
  }));
}

function waitOf(room: RoomCount["room"], routes: readonly Route[], plan: Walk): string {
  const several = (n: number, words: string): string => `${n} ${words}`;
  if (room === "Door") {
    const tests = routes.filter((route) => route.destiny === "at the Door").length;
    const aside = routes.filter((route) => route.destiny === "set aside").length;
    return `${several(tests, "without an answer to a must-ask test")}; ${several(aside, "set aside until someone has answered")}`;
  }
  if (room === "Ward") {
    const waits = routes.filter((route) => route.wardDays);
    const longest = Math.max(0, ...waits.map((route) => route.wardDays?.typical ?? 0));
    return waits.length === 0
      ? "nothing needs quarantine"
      : `${several(waits.length, "need quarantine")}; the longest typical wait is ${longest} days`;
  }
  const act = room === "Bench" ? "clean" : room === "Camera" ? "image" : "box";
  const ends = [...plan.ends]
    .map(([job, days]) => days[job.tasks.findIndex((task) => task.act === act)] ?? -1)
    .filter((day) => day >= 0);
  return ends.length === 0 ? "no work planned" : `work until day ${Math.max(...ends) + 1} of the plan`;
}
