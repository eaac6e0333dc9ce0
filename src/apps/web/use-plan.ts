import { useCallback, useEffect, useState } from "react";
import type { Plan } from "../../core/plan/plan.ts";

export interface PaperFile {
  readonly file: string;
  readonly bytes: number;
}

export type PlanState =
  | { readonly kind: "opening" }
  | { readonly kind: "failed" }
  | { readonly kind: "open"; readonly plan: Plan; readonly papers: readonly PaperFile[] | null };

/** Fetches the plan and the list of papers; `again` tries once more. Papers that cannot be listed do not hide the plan. */
export function usePlan(): { readonly state: PlanState; readonly again: () => void } {
  const [state, setState] = useState<PlanState>({ kind: "opening" });
  const open = useCallback(async () => {
    setState({ kind: "opening" });
    try {
      const [plan, papers] = await Promise.all([
        fetchJson<Plan>("api/page"),
        fetchJson<PaperFile[]>("api/papers").catch(() => null),
      ]);
      setState({ kind: "open", plan, papers });
    } catch {
      setState({ kind: "failed" });
    }
  }, []);
  useEffect(() => {
    void open();
  }, [open]);
  return { state, again: open };
}

async function fetchJson<T>(path: string): Promise<T> {
  const reply = await fetch(path);
  if (!reply.ok) throw new Error(`${path}: ${reply.status}`);
  return (await reply.json()) as T; // our own server wrote it from the same type
}
