import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from "react";
import type { Problem } from "../../../core/outcome/problem.ts";
import { shownProblem } from "../../../core/say/rooms/problem.ts";
import { walls } from "../../../core/say/rooms/walls.ts";
import "./notice.css";

/** What is told after an act: what was written, with its undoing; or why it was not. */
export type Notice =
  | { readonly said: string; readonly undo: () => Promise<void> }
  | { readonly said: string; readonly isTakenBack: true }
  | { readonly problem: Problem };

const NoticeContext = createContext<(notice: Notice) => void>(() => {});
export const useNotice = (): ((notice: Notice) => void) => useContext(NoticeContext);

/** Long enough to reach it with gloves on. A problem stays until it is closed. */
const SHOWN_MS = 20_000;

export function NoticeProvider({ children }: { readonly children: ReactNode }) {
  const [notice, setNotice] = useState<Notice | null>(null);
  const tell = useCallback((next: Notice) => setNotice(next), []);
  const close = useCallback(() => setNotice(null), []);
  useEffect(() => {
    if (notice === null || "problem" in notice) return;
    const timer = setTimeout(close, SHOWN_MS);
    return () => clearTimeout(timer);
  }, [notice, close]);
  const shown = useMemo(() => <NoticeBar notice={notice} close={close} />, [notice, close]);
  return (
    <NoticeContext value={tell}>
      {children}
      {shown}
    </NoticeContext>
  );
}

/** Stands in the page from the start, so that screen readers hear what comes into it. */
const NoticeBar = ({ notice, close }: { readonly notice: Notice | null; readonly close: () => void }) => (
  <div
    className="notice"
    data-shown={notice !== null}
    data-tone={notice && "problem" in notice ? "problem" : "said"}
  >
    <div role="status" aria-live="polite" className="notice-words">
      {notice && "said" in notice && (
        <p>{"isTakenBack" in notice ? walls.takenBack(notice.said) : notice.said}</p>
      )}
    </div>
    <div role="alert" className="notice-words">
      {notice && "problem" in notice && <ProblemWords problem={notice.problem} />}
    </div>
    {notice && "undo" in notice && (
      <button type="button" onClick={() => void notice.undo()}>
        {walls.undo}
      </button>
    )}
    {notice && (
      <button type="button" className="notice-close" aria-label={walls.close} onClick={close}>
        ✕
      </button>
    )}
  </div>
);

/** Says what stands in the way and what to do. */
export function ProblemWords({ problem }: { readonly problem: Problem }) {
  const { what, remedy } = shownProblem(problem);
  return (
    <>
      <p>
        <strong>{what}</strong>
      </p>
      {remedy !== "" && <p>{remedy}</p>}
    </>
  );
}
