import type { Limits } from "../../../core/items/campaign.ts";

/** Whether a limit would let more through than before. A break is the stricter the longer it is. */
export const isLooser = (limit: keyof Limits, before: number, after: number): boolean =>
  limit === "maskBreakMinutes" ? after < before : after > before;
