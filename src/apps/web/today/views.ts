import type { Act } from "../../../core/items/campaign.ts";
import { isOf, standingOf } from "../../../core/log/standing.ts";
import { eventsAbout, namesOn } from "../../../core/log/state.ts";
import { type FloorRoom, roomOfAct } from "../log/item-row.ts";
import type { Now } from "../log/now.ts";

/** One room as the day begins. */
export interface RoomToday {
  readonly room: FloorRoom;
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
  /** Items with answers that contradict. */
  readonly disagreements: number;
}

const ROOMS = ["door", "ward", "bench", "camera", "shelf"] as const;

const todayView = (now: Now): TodayView => {
  const { work, today, house } = now;
  const planned = (work?.assignments ?? []).filter(({ day }) => day === today);
  const rows = (work?.clock ?? []).filter(({ day }) => day === today);
  const name = (code: string): string => house.people.find((each) => each.code === code)?.name ?? code;
  return {
    hasPlan: work !== null,
    questions: openQuestions(now),
    disagreements: now.rows.filter((row) => row.disagreements > 0).length,
    rooms: ROOMS.map((room) => {
      const own = planned.filter(({ act }) => roomOfAct(act) === room);
      const laid = rows.filter(({ act }) => act !== null && roomOfAct(act) === room);
      return {
        room,
        here: now.rows.filter((row) => row.room === room).length,
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

function openQuestions({ state }: Now): number {
  return namesOn(state, "question").filter((question) => {
    const { counted } = standingOf(eventsAbout(state, `question:${question}`));
    return !counted.some((event) => isOf(event, "questionAnswered"));
  }).length;
}

export const todayViews = { today: todayView } as const;
