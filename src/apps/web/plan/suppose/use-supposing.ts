import { useCallback, useRef, useState } from "react";
import type { Problem } from "../../../../core/outcome/problem.ts";
import type { Answer } from "../../../../core/plan/what-if/answers.ts";
import type { Change } from "../../../../core/plan/what-if/change.ts";
import type { Outlook } from "../../../../core/plan/what-if/compare.ts";
import type { DeskLine } from "../../../../edge/solve/what-if-messages.ts";
import { jsonLines } from "../json-lines.ts";

type Said = { readonly said: readonly string[]; readonly cautions: readonly string[] };

/** What is known so far of what was supposed. */
export interface Supposing {
  /** The phrases it is about. */
  readonly asked: readonly string[];
  readonly isAsking: boolean;
  readonly isAway: boolean;
  readonly problems: readonly Problem[];
  /** What was understood, a sentence for each change, and the changes themselves. */
  readonly supposed: readonly string[];
  readonly changes: readonly Change[];
  readonly asItIs: { readonly outlook: Outlook; readonly draws: number } | null;
  readonly first: (Answer & { step: "first" } & Said) | null;
  readonly proved: (Answer & { step: "proved" } & Said) | null;
}

const NOTHING: Supposing = {
  ...{ asked: [], isAsking: false, isAway: false, problems: [], supposed: [], changes: [] },
  ...{ asItIs: null, first: null, proved: null },
};

/** Asks what would become of the plan, all phrases together, and hears the answers as they come. */
export function useSupposing(): {
  readonly now: Supposing;
  readonly ask: (phrases: readonly string[]) => void;
  readonly stop: () => void;
} {
  const [now, setNow] = useState<Supposing>(NOTHING);
  const going = useRef<AbortController>(null);
  const stop = useCallback(() => {
    going.current?.abort();
    setNow((before) => ({ ...before, isAsking: false }));
  }, []);
  const ask = useCallback((phrases: readonly string[]) => {
    going.current?.abort();
    const own = new AbortController();
    going.current = own;
    const tell = (next: (before: Supposing) => Supposing): void => {
      if (!own.signal.aborted) setNow(next);
    };
    tell(() => ({ ...NOTHING, asked: phrases, isAsking: true }));
    void askFor(phrases, own.signal, tell);
  }, []);
  return { now, ask, stop };
}

async function askFor(
  phrases: readonly string[],
  signal: AbortSignal,
  tell: (next: (before: Supposing) => Supposing) => void,
): Promise<void> {
  const body = { scenarios: [phrases.join("; ")] };
  const reached = await jsonLines<DeskLine | { step: "problem"; problem: Problem }>(
    "api/what-if",
    body,
    signal,
  );
  if (reached.kind === "away") return tell((before) => ({ ...before, isAsking: false, isAway: true }));
  if (reached.kind === "refused")
    return tell((before) => ({ ...before, isAsking: false, problems: reached.problems }));
  for await (const line of reached.lines) tell((before) => withLine(before, line));
  tell((before) => ({
    ...before,
    isAsking: false,
    isAway: before.proved === null && before.problems.length === 0,
  }));
}

function withLine(before: Supposing, line: DeskLine | { step: "problem"; problem: Problem }): Supposing {
  switch (line.step) {
    case "understood":
      return { ...before, supposed: line.supposed[0] ?? [], changes: line.changes[0] ?? [] };
    case "as it is":
      return { ...before, asItIs: line };
    case "first":
      return { ...before, first: line };
    case "proved":
      return { ...before, proved: line };
    case "problem":
      return { ...before, problems: [line.problem] };
    default:
      return before; // `refused` comes as a refusal, the others answer other questions
  }
}
