import type { Problem } from "../outcome/problem.ts";
import { isJson } from "./canonical-json.ts";
import { kindOf } from "./kinds.ts";

/** What a payload lacks to be one of its kind and version, or null; of a kind or version that is not known here nothing is asked. */
export function unfitIn(event: {
  readonly kind: string;
  readonly version: number;
  readonly payload: unknown;
}): Problem | null {
  const parsed = kindOf(event.kind, event.version)?.payload.safeParse(event.payload);
  const [issue] = parsed?.error?.issues ?? [];
  if (issue === undefined && isJson(event.payload)) return null;
  return {
    code: "event-unfit",
    severity: "stop",
    got: [event.kind, ...(issue?.path ?? [])].join("."),
    expected: issue?.message ?? "plain text and numbers",
    remedy: "It was not taken. Mend it where it was written, and write it again.",
  };
}
