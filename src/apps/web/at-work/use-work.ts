import type { Act } from "../../../core/items/campaign.ts";
import { atWork as words } from "../../../core/say/rooms/at-work.ts";
import { useStatus } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import type { Draft } from "../log/own-entries.ts";
import { useWriter } from "../walls/writer.tsx";
import { clockMinute } from "./clock-minute.ts";
import type { RunningShown } from "./views.ts";

/** Begins work on an item: the beginning and its coming to the room are written together. */
export function useStart(): (
  item: string,
  act: Act,
  exposed: boolean,
  room: "Bench" | "Camera",
) => Promise<void> {
  const [write, status, { person }] = [useWrite(), useStatus(), useWriter()];
  return async (item, act, exposed, room) => {
    if (status === null || person === null) return;
    const at = { day: status.today, minute: clockMinute() };
    await write(
      words.started(act, item),
      { kind: "sessionStarted", payload: { person, ...at, acts: [act], exposed } },
      { kind: "itemMoved", payload: { item, room, ...at } },
    );
  };
}

/** What ends a spell of work. */
export interface Ending {
  readonly minutes: number;
  readonly maskMinutes: number;
  /** `done`: the act is done; `pause`: it goes on later; `never`: nothing was begun. */
  readonly how: "done" | "pause" | "never";
  readonly wrapper: string;
  readonly station: string;
}

/** Ends the work that runs. @returns whether it is written */
export function useEnd(running: RunningShown): (ending: Ending) => Promise<boolean> {
  const [write, { person }] = [useWrite(), useWriter()];
  return async (ending) => {
    if (person === null) return false;
    const { act, item } = running;
    const acts = ending.how === "done" && item !== "" ? [actOf(running, ending, person)] : [];
    const said = { done: words.ended(act, item), pause: words.paused(act, item), never: words.notBegun };
    return (await write(said[ending.how], spellOf(running, ending, person), ...acts)) === null;
  };
}

function spellOf(running: RunningShown, ending: Ending, person: string): Draft {
  const { day, minute, act, exposed } = running;
  const minutes = ending.how === "never" ? 0 : ending.minutes;
  const near = exposed
    ? { exposedMinutes: minutes, maskMinutes: Math.min(minutes, ending.maskMinutes) }
    : null;
  return {
    kind: "sessionWorked",
    payload: { person, day, minute, acts: [act], minutes, ...(near ?? { exposedMinutes: 0 }) },
  };
}

function actOf({ item, act, day, exposed, satBefore }: RunningShown, ending: Ending, person: string): Draft {
  const work = { item, day, person, minutes: Math.min(1440, ending.minutes + satBefore), exposed };
  const station = ending.station === "" ? {} : { station: ending.station };
  switch (act) {
    case "wrap":
      return { kind: "itemWrapped", payload: { ...work, wrapper: ending.wrapper } };
    case "covers":
      return { kind: "coversPictured", payload: { ...work, ...station } };
    case "image":
      return { kind: "actDone", payload: { ...work, ...station, part: "", act: "image" } };
    default:
      return { kind: "actDone", payload: { ...work, ...station, part: "", act: "clean" } };
  }
}

/** Writes that the mask came off now: a stretch of no minutes, from which the break is counted. */
export function useMaskOff(): () => void {
  const [write, status, { person }] = [useWrite(), useStatus(), useWriter()];
  return () => {
    if (status === null || person === null) return;
    void write(words.maskOffSaid, {
      kind: "sessionWorked",
      payload: {
        ...{ person, day: status.today, minute: clockMinute(), acts: ["clean"] },
        ...{ minutes: 0, exposedMinutes: 0, maskMinutes: 0 },
      },
    });
  };
}
