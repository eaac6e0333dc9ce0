import type { Kind } from "../../../core/log/kinds.ts";
import { whyNot } from "../../../core/say/rooms/questions.ts";
import { useStatus } from "../link/use-view.ts";
import { useWriter } from "../walls/writer.tsx";

/** Why entries of these kinds cannot be written here and now; null: they can. An adviser from outside writes under the role alone. */
export function useWhyNot(...kinds: readonly Kind[]): string | null {
  const status = useStatus();
  const { person } = useWriter();
  if (status === null) return null;
  if (kinds.some((kind) => !status.me.writes.includes(kind))) return whyNot.role;
  return person === null && status.me.role !== "conservator" ? whyNot.nobody : null;
}
