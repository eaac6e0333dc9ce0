import type { Act } from "../../../core/items/campaign.ts";
import { isOf, standingOf } from "../../../core/log/standing.ts";
import { eventsAbout, namesOn } from "../../../core/log/state.ts";
import type { Now } from "../log/now.ts";
import type { RoomName } from "../walls/where.ts";

/** One room as the day begins. */
export interface RoomToday {
  readonly room: Extract<RoomName, "door" | "ward" | "bench" | "camera" | "shelf">;
  /** Items that stand here now. */
  readonly here: number;
  /** Items the plan has worked on here today, and how many of them are done. */
  readonly toDo: number;
  readonly done: number;
  /** Names of those who work here today. */
  readonly people: readonly string[];
  /** Minutes after midnight when the last of them ends here; null: not laid in the clock. */
  readonly until: number | null;
}

export interface TodayView {
  readonly hasPlan: boolean;
  readonly rooms: readonly RoomToday[];
  readonly questions: number;
}

const ROOM_OF: Readonly<Record<Act, RoomToday["room"]>> = {
  survey: "door",
  admit: "ward",
  release: "ward",
  covers: "camera",
  wrap: "bench",
  clean: "bench",
  image: "camera",
  box: "shelf",
};
const ROOMS = ["door", "ward", "bench", "camera", "shelf"] as const;

const todayView = (now: Now): TodayView => {
  const { work, today, house } = now;
  const planned = (work?.assignments ?? []).filter(({ day }) => day === today);
  const rows = (work?.clock ?? []).filter(({ day }) => day === today);
  const here = standingHere(now);
  const name = (code: string): string => house.people.find((each) => each.code === code)?.name ?? code;
  return {
    hasPlan: work !== null,
    questions: openQuestions(now),
    rooms: ROOMS.map((room) => {
      const own = planned.filter(({ act }) => ROOM_OF[act] === room);
      const laid = rows.filter(({ act }) => act !== null && ROOM_OF[act] === room);
      return {
        room,
        here: here.get(room) ?? 0,
        toDo: own.length,
        done: own.filter(({ item, act }) => isDone(now, item, act)).length,
        people: [...new Set(own.map(({ person }) => name(person)))],
        until: laid.length === 0 ? null : Math.max(...laid.map(({ to }) => to)),
      };
    }),
  };
};

const isDone = (now: Now, item: string, act: Act): boolean =>
  now.item(item)?.sessions.some((each) => each.act === act && each.day === now.today) ?? false;

/** How many items stand in each room: where they were last put, else where their route stands. */
function standingHere(now: Now): ReadonlyMap<RoomToday["room"], number> {
  const counts = new Map<RoomToday["room"], number>();
  for (const id of now.itemIds) {
    const found = now.item(id);
    if (found === null) continue;
    const room = roomOf(found);
    counts.set(room, (counts.get(room) ?? 0) + 1);
  }
  return counts;
}

function roomOf({ place, route, history }: NonNullable<ReturnType<Now["item"]>>): RoomToday["room"] {
  if (route.destiny === "done") return "shelf";
  if (place !== null) return place.room.toLowerCase() as RoomToday["room"]; // the rooms' own names
  if (history.wardDays !== null) return "ward";
  const next = route.steps[0];
  return next === undefined || route.destiny === "at the Door" || next.act === "admit"
    ? "door"
    : ROOM_OF[next.act];
}

function openQuestions({ state }: Now): number {
  return namesOn(state, "question").filter((question) => {
    const { counted } = standingOf(eventsAbout(state, `question:${question}`));
    return !counted.some((event) => isOf(event, "questionAnswered"));
  }).length;
}

export const todayViews = { today: todayView } as const;
