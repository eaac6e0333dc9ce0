import type { Act } from "../../../core/items/campaign.ts";
import type { SheetRow } from "../../../core/plan/plan.ts";
import { sayAct, sayDirt } from "../../../core/say/conditions.ts";
import { sayPause } from "../../../core/say/day-sheet.ts";
import type { Now } from "../log/now.ts";
import type { RoomName } from "../walls/where.ts";

/** One line of somebody's day: work, or what stands between. */
export interface DayLine {
  /** Minutes after midnight. */
  readonly from: number;
  readonly to: number;
  readonly isWork: boolean;
  /** The act, or what the pause is for. */
  readonly text: string;
  readonly room: RoomName | null;
  readonly station: string;
  /** What the work leaves behind; empty: nothing worth saying. */
  readonly dirt: string;
  readonly exposed: boolean;
  readonly goesOn: boolean;
  readonly items: readonly { readonly id: string; readonly title: string; readonly isDone: boolean }[];
}

const ROOM_OF: Readonly<Record<Act, RoomName>> = {
  survey: "door",
  admit: "ward",
  release: "ward",
  covers: "camera",
  wrap: "bench",
  clean: "bench",
  image: "camera",
  box: "shelf",
};

/** Somebody's day by the plan's clock; null: there is no plan, or it has no such person today.   @param takes which rows */
export function dayLines(now: Now, takes: (row: SheetRow) => boolean): readonly DayLine[] | null {
  const rows = (now.work?.clock ?? []).filter((row) => row.day === now.today && takes(row));
  return rows.length === 0 ? null : rows.map((row) => lineOf(now, row));
}

function lineOf(now: Now, row: SheetRow): DayLine {
  const { from, to, act, station, exposed, goesOn } = row;
  const isWork = row.kind === "work" && act !== null;
  return {
    ...{ from, to, isWork, station, exposed, goesOn },
    text: isWork ? sayAct(act) : sayPause(row),
    room: isWork ? ROOM_OF[act] : null,
    dirt: isWork && row.dirt > 0 ? sayDirt(row.dirt) : "",
    items: isWork
      ? row.items.map((id) => {
          const found = now.item(id);
          return { id, title: found?.item.title ?? "", isDone: found?.care.done.has(act) ?? false };
        })
      : [],
  };
}
