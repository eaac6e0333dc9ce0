import { useDraft } from "../walls/use-draft.ts";
import type { ShotsShown } from "./views.ts";

/** Pictures taken so far, set by set: counted by hand, kept on this device, never fewer than the files linked. */
export interface Tally {
  of(shot: Pick<ShotsShown, "key" | "linked">): number;
  set(key: string, taken: number): void;
}

const NONE: Readonly<Record<string, number>> = {};

export function useTally(item: string, act: string): Tally {
  const [counts, setCounts] = useDraft(`shots ${item} ${act}`, NONE);
  return {
    of: ({ key, linked }) => Math.max(linked, counts[key] ?? 0),
    set: (key, taken) => setCounts({ ...counts, [key]: Math.max(0, taken) }),
  };
}
