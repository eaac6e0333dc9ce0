import type { Problem } from "../../../core/outcome/problem.ts";

/** What a long answer comes to. `away`: the laptop was not reached. */
export type LinesReached<T> =
  | { readonly kind: "lines"; readonly lines: AsyncGenerator<T, void, undefined> }
  | { readonly kind: "refused"; readonly problems: readonly Problem[] }
  | { readonly kind: "away" };

/** Asks for an answer that comes line by line, one JSON value a line. A line that breaks off ends it. */
export async function jsonLines<T>(
  path: string,
  body: unknown,
  signal: AbortSignal,
): Promise<LinesReached<T>> {
  try {
    const reply = await fetch(path, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
      signal,
    });
    if (reply.ok && reply.body) return { kind: "lines", lines: linesOf<T>(reply.body) };
    const said = (await reply.json()) as { problem?: Problem; problems?: readonly Problem[] }; // our own server's refusal
    return { kind: "refused", problems: said.problems ?? (said.problem ? [said.problem] : []) };
  } catch {
    return { kind: "away" };
  }
}

async function* linesOf<T>(body: ReadableStream<Uint8Array>): AsyncGenerator<T, void, undefined> {
  const reader = body.getReader();
  const decoder = new TextDecoder();
  let rest = "";
  try {
    for (;;) {
      const { done, value } = await reader.read();
      rest += decoder.decode(value, { stream: !done });
      const lines = rest.split("\n");
      rest = lines.pop() ?? "";
      for (const line of lines) if (line !== "") yield JSON.parse(line) as T; // our own server wrote it from the same type
      if (done) return;
    }
  } catch {
    // left, or the laptop went out of reach: what came stands
  } finally {
    reader.cancel().catch(() => {});
  }
}
