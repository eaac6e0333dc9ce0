import type { Route } from "../../care/care.ts";
import type { Norms } from "../../care/norms.ts";
import type { Campaign } from "../../items/campaign.ts";
import { PER_SESSION } from "../../plan/problem.ts";
import type { Day } from "../../units/day.ts";

/** What one piece of work that is done used of one consumable, were it at the norm. */
export interface PastUse {
  readonly day: Day;
  readonly quantity: number;
}

/**
 * Use → what the work written down took of it at the norm, by day: what a person puts on is counted once for each person and exposed day,
 * what an item takes on the first day of the act, as the plan does.
 * @param worked routes of the worked items as if nothing had been done yet
 */
export function pastUses(
  campaign: Pick<Campaign, "sessions" | "planFrom">,
  worked: readonly Route[],
  norms: Norms,
): Map<string, PastUse[]> {
  const uses = new Map<string, PastUse[]>();
  const add = (use: string, day: Day, quantity: number): void => {
    const list = uses.get(use) ?? [];
    list.push({ day, quantity });
    uses.set(use, list);
  };
  const steps = new Map(
    worked.flatMap(({ item, steps }) => steps.map((step) => [`${item} ${step.act}`, step.uses] as const)),
  );
  const dressed = new Set<string>();
  const begun = new Set<string>();
  for (const { item, act, day, person, exposed } of inDayOrder(campaign)) {
    if (exposed && isNew(dressed, `${person} ${day}`))
      for (const use of PER_SESSION) add(use, day, norms.band(use).typical);
    if (isNew(begun, `${item} ${act}`))
      for (const [use, quantity] of Object.entries(steps.get(`${item} ${act}`) ?? {}))
        add(use, day, quantity);
  }
  return uses;
}

const inDayOrder = ({ sessions, planFrom }: Pick<Campaign, "sessions" | "planFrom">) =>
  sessions.filter(({ day }) => day < planFrom).sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));

const isNew = (seen: Set<string>, key: string): boolean => !seen.has(key) && seen.add(key) === seen;

/** At the norm, from one morning to the evening before another. */
export const usedBetween = (past: readonly PastUse[], from: Day, to: Day): readonly PastUse[] =>
  past.filter(({ day }) => from <= day && day < to);
export const sumOf = (past: readonly PastUse[]): number =>
  past.reduce((sum, { quantity }) => sum + quantity, 0);
