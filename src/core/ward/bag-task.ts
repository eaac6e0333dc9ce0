import { type BagReading, type BagState, RELEASE, type ReleaseMissing } from "./bag-state.ts";

/* What a bag that dries asks of people next, and from when. Hours from any fixed moment. */

/** `keep-dry-on`: too damp for a release, or the damp came back: gel, or more of it, or a drier room. */
export type BagTask =
  | "take-gel-out-now"
  | "too-damp-without-gel"
  | "close"
  | "release"
  | "read"
  | "read-and-change-gel"
  | "keep-dry-on";

export interface BagDue {
  readonly task: BagTask;
  /** From this hour on; what lies behind is due. */
  readonly fromHours: number;
}

/** Every bag is read at least every third day, and its gel looked at. Common practice, no source. */
export const LONGEST_UNREAD_HOURS = 72;
/** From here on moulds of sized paper, leather and dirt grow: the same line as the mould watch's first lamp. */
export const DAMP_RELHUM = 0.65;

/** @param quietSince hour when the bag was last closed or opened, or its gel touched; null: nothing was written */
export function bagDue(
  state: BagState,
  readings: readonly BagReading[],
  quietSince: number | null,
  now: number,
): BagDue {
  const { latest, gelInside, closedSince, drying, release } = state;
  if (gelInside && (drying === "stop" || drying === "over-dried"))
    return { task: "take-gel-out-now", fromHours: latest?.hours ?? now };
  if (closedSince === null || quietSince === null) return { task: "close", fromHours: quietSince ?? now };
  if (release.earned) return { task: "release", fromHours: latest?.hours ?? now };
  const known = readings.filter(({ hours }) => hours <= now);
  const lastLook = Math.max(quietSince, ...known.map(({ hours }) => hours));
  if (gelInside) return { task: "read-and-change-gel", fromHours: lastLook + LONGEST_UNREAD_HOURS };
  if (latest !== null && latest.relHum >= DAMP_RELHUM)
    return { task: "too-damp-without-gel", fromHours: latest.hours };
  const missing = release.checks.map((check) => check.missing);
  if (missing.some((each) => each === "still-too-damp" || each === "it-came-back"))
    return { task: "keep-dry-on", fromHours: latest?.hours ?? now };
  const next = Math.max(...missing.map((each) => readFrom(each, state, known, quietSince)));
  return { task: "read", fromHours: Math.min(next, lastLook + LONGEST_UNREAD_HOURS) };
}

/** From which hour a reading would help with what is missing. */
function readFrom(
  missing: ReleaseMissing | "",
  { latest }: BagState,
  readings: readonly BagReading[],
  quietSince: number,
): number {
  if (missing === "read-after-two-days") return quietSince + RELEASE.reboundHours;
  if (missing !== "read-again-a-day-later") return quietSince;
  const inside = readings.filter(({ hours }) => hours >= quietSince).sort((a, b) => a.hours - b.hours);
  const above = inside.findLastIndex(({ relHum }) => relHum > RELEASE.passRelHum);
  return (inside[above + 1]?.hours ?? latest?.hours ?? quietSince) + RELEASE.hoursApart;
}
