import { useCallback, useEffect, useRef, useState } from "react";
import type { Problem } from "../../../../core/outcome/problem.ts";
import type { Day } from "../../../../core/units/day.ts";
import type { PlanLine } from "../../../server/plan-maker-messages.ts";
import { ask, post } from "../../log/server-line.ts";
import { jsonLines } from "../json-lines.ts";

export interface Making {
  /** Where the making of a plan stands, on whichever device it was begun; null: none was, or it was left. */
  readonly line: PlanLine | null;
  readonly isStopping: boolean;
  readonly isAway: boolean;
  readonly problem: Problem | null;
}

const NONE: Making = { line: null, isStopping: false, isAway: false, problem: null };

export interface MakingDone {
  readonly now: Making;
  readonly begin: (morning: Day, search: "short" | "long") => void;
  readonly stop: () => void;
  readonly accept: (plan: string) => void;
  readonly leave: () => void;
}

/** A plan in the making on the server: it goes on when this screen is left, and is found again on coming back. */
export function useMaking(morning: Day, mayPlan: boolean): MakingDone {
  const [now, setNow] = useState<Making>(NONE);
  const gone = useRef(new AbortController());
  const hear = useCallback(async (path: string, body: unknown) => {
    const { signal } = gone.current;
    const tell = (part: Partial<Making>): void => {
      if (!signal.aborted) setNow((before) => ({ ...before, ...part }));
    };
    tell({ isAway: false, problem: null, isStopping: false });
    const reached = await jsonLines<PlanLine>(path, body, signal);
    if (reached.kind === "away") return tell({ isAway: true });
    if (reached.kind === "refused") return tell({ problem: reached.problems[0] ?? null });
    let last: PlanLine | null = null;
    for await (const line of reached.lines) {
      last = line;
      tell({ line });
    }
    if (last === null || !isEnd(last)) tell({ isAway: true });
  }, []);
  // what was begun before, here or elsewhere, is heard on
  useEffect(() => {
    gone.current = new AbortController();
    if (mayPlan)
      void ask<PlanLine | "">("api/replan").then((reached) => {
        if (reached.kind !== "answer" || reached.value === "") return;
        if (isEnd(reached.value)) setNow({ ...NONE, line: reached.value });
        else void hear("api/replan", { morning });
      });
    return () => gone.current.abort();
  }, [mayPlan, hear, morning]);
  return {
    now,
    begin: (day, search) => void hear("api/replan", { morning: day, search }),
    stop: () => {
      setNow((before) => ({ ...before, isStopping: true }));
      void post("api/replan/stop", {});
    },
    accept: (plan) => void hear("api/replan/accept", { plan }),
    leave: () => setNow(NONE),
  };
}

export const isEnd = ({ step }: PlanLine): boolean =>
  step === "ready" || step === "accepted" || step === "problem";
