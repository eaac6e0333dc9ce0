import type { LogEvent } from "../../src/core/log/event.ts";
import type { Problem } from "../../src/core/outcome/problem.ts";
import type { Appended, Placed } from "../../src/edge/keep/keep.ts";

/** No answer may come for this long; a tablet would try again. */
const PATIENCE_MS = 20_000;

/** What a server answered to a batch; null: no answer came, and nobody knows what became of it. */
export async function send(address: string, events: readonly LogEvent[]): Promise<Appended | null> {
  const answer = await ask(`${address}/events`, { method: "POST", body: JSON.stringify(events) });
  return answer as Appended | null; // the server's own shape
}

/** What a server has after a place, all of it; null: no answer came, or a refusal. */
export async function fetchAfter(address: string, place: number): Promise<Placed[] | null> {
  const all: Placed[] = [];
  for (;;) {
    const page = (await ask(`${address}/events?after=${all.at(-1)?.place ?? place}`)) as Placed[] | null; // the server's own shape
    if (page === null) return null;
    if (page.length === 0) return all;
    all.push(...page);
  }
}

async function ask(url: string, init: RequestInit = {}): Promise<unknown> {
  try {
    const response = await fetch(url, { ...init, signal: AbortSignal.timeout(PATIENCE_MS) });
    return response.ok ? await response.json() : null;
  } catch {
    return null;
  }
}

export const isTaken = (answer: Appended | null): answer is Appended =>
  answer !== null && answer.refused.length === 0;

export const firstCode = (problems: readonly Problem[] | undefined): string => problems?.[0]?.code ?? "taken";
