import { useCallback } from "react";
import type { Problem } from "../../../core/outcome/problem.ts";
import type { Draft } from "../log/own-entries.ts";
import { useNotice } from "../walls/notice.tsx";
import { useWriter } from "../walls/writer.tsx";
import { undoAs, writeAs } from "./tablet-link.ts";

/** What became of writing: null when it is on this device's disk, else why not. */
export type Write = (said: string, ...drafts: readonly Draft[]) => Promise<Problem | null>;

/** Writes entries as whoever works on this device, says so, and offers to take it back.
 *  @returns a function: what to say (“Wiped the table down”), then the entries, kept all or none */
export function useWrite(): Write {
  const { person } = useWriter();
  const tell = useNotice();
  return useCallback(
    async (said, ...drafts) => {
      const written = await writeAs(person, drafts);
      if (!written.ok) {
        const [problem] = written.problems;
        if (problem) tell({ problem });
        return problem ?? null;
      }
      const undo = async (): Promise<void> => {
        const back = await undoAs(person, written.value);
        if (!back.ok && back.problems[0]) tell({ problem: back.problems[0] });
        else tell({ said, isTakenBack: true });
      };
      tell({ said, undo });
      return null;
    },
    [person, tell],
  );
}
