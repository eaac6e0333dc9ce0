import type { LogEvent } from "../../src/core/log/event.ts";
import type { Placed } from "../../src/edge/keep/keep.ts";
import { deviceBook } from "../../src/edge/serve/device-book.ts";
import { openServerFile } from "../../src/edge/serve/server-file.ts";

/** No answer may come for this long; a tablet would try again. */
const PATIENCE_MS = 20_000;

/** Where a device sends to, and by what it is let in. */
export interface Line {
  readonly address: string;
  readonly token: string;
}

/** Lets a device in, as a scribe, before the server of a folder starts; its token holds whatever becomes of the server. */
export function letIn(folder: string, device: string): string {
  const file = openServerFile(folder);
  const token = deviceBook(file).admit({ device, role: "scribe", person: null }, Date.now());
  file.close();
  return token;
}

/** What became of a batch: `kept`, the code of what was refused, or `no answer`, when nobody knows. */
export async function send(line: Line, events: readonly LogEvent[]): Promise<string> {
  const answer = await ask(line, "", { method: "POST", body: JSON.stringify({ events }) });
  const { answers, code } = answer as {
    readonly answers?: readonly { readonly answer: string; readonly problem?: { readonly code: string } }[];
    readonly code?: string;
  }; // as the server describes it at /api/description
  if (answers === undefined) return code ?? "no answer";
  const refused = answers.find(({ answer }) => answer !== "kept");
  return refused === undefined ? "kept" : (refused.problem?.code ?? refused.answer);
}

/** What a server has after a place, all of it; null: it cannot be read. */
export async function fetchAfter(line: Line, place = 0): Promise<Placed[] | null> {
  const all: Placed[] = [];
  for (;;) {
    const answer = await ask(line, `?after=${all.at(-1)?.place ?? place}&most=2000`);
    const { events, more } = answer as { readonly events?: readonly Placed[]; readonly more?: boolean }; // as described there
    if (events === undefined) return null;
    all.push(...events);
    if (more !== true) return all;
  }
}

/** @returns an empty answer when the line breaks */
async function ask({ address, token }: Line, query: string, init: RequestInit = {}): Promise<object> {
  const headers = { cookie: `leafward=${token}`, "content-type": "application/json" };
  const signal = AbortSignal.timeout(PATIENCE_MS);
  try {
    const response = await fetch(`${address}/api/events${query}`, { ...init, headers, signal });
    return (await response.json()) as object; // every answer is one, refusals too
  } catch {
    return {};
  }
}
