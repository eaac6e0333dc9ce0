import { useCallback, useEffect, useState } from "react";
import type { Plan } from "../../../core/plan/plan.ts";
import type { Day } from "../../../core/units/day.ts";
import type { PaperFile } from "../use-plan.ts";

/** Everybody's days, as the server sends them. */
export interface Roster {
  readonly from: Day;
  readonly end: Day;
  readonly people: readonly RosterPerson[];
}
export interface RosterPerson {
  readonly code: string;
  readonly name: string;
  /** Null: clean work, whatever the cause. */
  readonly limit: { readonly minutesADay: number; readonly daysAWeek: number } | null;
  /** [day from `from`] minutes near mould; −1: not there. */
  readonly near: readonly number[];
}

export type ShownPlan =
  | { readonly kind: "fetching" }
  | { readonly kind: "none" }
  | { readonly kind: "closed" }
  | { readonly kind: "failed" }
  | {
      readonly kind: "open";
      readonly plan: Plan;
      readonly roster: Roster;
      readonly papers: readonly PaperFile[] | null;
      /** The laptop is out of reach: this is what was last seen. */
      readonly isKept: boolean;
    };

/** The plan people work by, fetched anew whenever another one is accepted; out of reach, as this device last saw it. */
export function useShownPlan(accepted: string): { readonly shown: ShownPlan; readonly again: () => void } {
  const [shown, setShown] = useState<ShownPlan>({ kind: "fetching" });
  const [turn, setTurn] = useState(0);
  // which plan was accepted, and each new try, ask for it again
  useEffect(() => {
    let isHere = true;
    void fetchPlan().then((next) => {
      if (isHere) setShown(next);
    });
    return () => {
      isHere = false;
    };
  }, [accepted, turn]);
  const again = useCallback(() => setTurn((n) => n + 1), []);
  return { shown, again };
}

async function fetchPlan(): Promise<ShownPlan> {
  const page = await keptReply("api/page");
  if (page === null) return { kind: "failed" };
  if (page.reply.status === 204) return { kind: "none" };
  if (page.reply.status === 403) return { kind: "closed" };
  const [roster, papers] = await Promise.all([keptReply("api/roster"), keptReply("api/papers")]);
  if (!page.reply.ok || !roster?.reply.ok) return { kind: "failed" };
  return {
    kind: "open",
    plan: (await page.reply.json()) as Plan, // our own server wrote them from the same types
    roster: (await roster.reply.json()) as Roster,
    papers: papers?.reply.ok ? ((await papers.reply.json()) as PaperFile[]) : null,
    isKept: page.isKept,
  };
}

const KEPT = "leafward plan";

/** The server's reply, else the one this device kept of it; null: neither. */
async function keptReply(
  path: string,
): Promise<{ readonly reply: Response; readonly isKept: boolean } | null> {
  try {
    const reply = await fetch(path);
    if (reply.ok && reply.status !== 204) void (await caches.open(KEPT)).put(path, reply.clone());
    return { reply, isKept: false };
  } catch {
    const reply = await caches.match(path).catch(() => undefined);
    return reply ? { reply, isKept: true } : null;
  }
}
