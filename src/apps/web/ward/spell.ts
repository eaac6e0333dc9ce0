import type { Draft } from "../log/own-entries.ts";
import type { NearView } from "./bag-view.ts";
import type { When } from "./ward-items.ts";

/** Minutes near mould as an entry on somebody's account; none where nothing may be mouldy. */
export const spellNear = (
  near: NearView,
  person: string | null,
  { day, minute }: When,
  minutes: number,
  act: "admit" | "release",
): readonly Draft[] =>
  !near.isExposed || person === null
    ? []
    : [
        {
          kind: "sessionWorked",
          payload: {
            ...{ person, day, minute: Math.max(0, minute - Math.ceil(minutes)), acts: [act] },
            ...{ minutes, exposedMinutes: minutes },
          },
        },
      ];
