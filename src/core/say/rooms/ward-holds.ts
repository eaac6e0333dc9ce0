import type { ReleaseCheck } from "../../ward/bag-state.ts";
import type { DaysWait, Hold } from "../../ward/leave-ward.ts";
import { RELEASE_CONDITIONS, RELEASE_MISSING } from "../cautions/ward.ts";

/* What keeps an item in the Ward, in sentences. */

const percent = (fraction: number): string => `${Math.round(fraction * 100)} %`;

/** One condition of a release as it stands. */
export interface CheckSaid {
  readonly met: boolean;
  readonly asks: string;
  /** What was seen, against what is wanted; empty: no figure. */
  readonly seen: string;
  readonly missing: string;
}

/** @param hasGel gel lies in the bag: what is read beside it is the gel, and counts for nothing */
export function sayCheck({ condition, missing, seen, wanted, met }: ReleaseCheck, hasGel = false): CheckSaid {
  const asks = RELEASE_CONDITIONS[condition];
  if (hasGel && condition !== "gel-is-out" && condition !== "bag-is-closed")
    return { met: false, asks, seen: "", missing: "Counts from when the gel is out." };
  return {
    ...{ met, asks },
    seen: seen === undefined || wanted === undefined ? "" : saySeen(condition, seen, wanted),
    missing: missing === "" ? "" : RELEASE_MISSING[missing],
  };
}

function saySeen(condition: ReleaseCheck["condition"], seen: number, wanted: number): string {
  if (condition === "48-hours-below-50") return `${Math.floor(seen)} of ${wanted} hours.`;
  if (condition === "rebound-is-small")
    return `It ${seen < 0 ? "fell" : "rose"} by ${percent(Math.abs(seen))}; at most ${percent(wanted)}.`;
  const error = condition === "error-leaves-room" ? " with the reader's error" : "";
  return `Now ${percent(seen)}${error}; at most ${percent(wanted)}.`;
}

const WAITS: Readonly<Record<DaysWait["kind"], readonly [what: string, ends: string, most: string]>> = {
  freezing: [
    "Freezing",
    "It ends when the core has been at −20 °C that long; then warm up sealed for 24 to 48 hours",
    "in a domestic freezer",
  ],
  "watch for insects": [
    "Watching for insects",
    "It ends with a look that finds no fresh dust",
    "where in doubt",
  ],
  "second look at mould": [
    "Watching for mould",
    "It ends with a second look: growth or not, smell or not, written at the Door",
    "where in doubt",
  ],
};

/** `Freezing: day 3 of 7 (14 in a domestic freezer). …` */
export function sayWait({ kind, gone, least, most }: DaysWait): string {
  const [what, ends, worse] = WAITS[kind];
  return `${what}: ${gone} of ${least} days behind (${most} ${worse}). ${ends}.`;
}

export const sayWhole = ({ asks, seen, missing }: CheckSaid): string =>
  [asks, seen, missing].filter((each) => each !== "").join(" ");

export function sayHold(hold: Hold): string {
  switch (hold.kind) {
    case "reading":
      return sayWhole(sayCheck(hold.check));
    case "no bag":
      return "It lies in no bag, so nothing can be read: close it in one with a reader.";
    case "days":
      return sayWait(hold.wait);
    case "in the freezer":
      return "It is in the freezer.";
    case "warming up":
      return `It warms up sealed for ${Math.ceil(hold.hoursLeft)} more ${Math.ceil(hold.hoursLeft) === 1 ? "hour" : "hours"}.`;
    case "rule":
      return `${hold.reason.text} Rule ${hold.reason.rule}.`;
    case "tests":
      return "Must-ask tests have no answer, and not tested is never no: answer them at the Door.";
  }
}
