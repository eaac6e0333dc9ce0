import { useCallback, useEffect, useRef } from "react";
import { sayDay } from "../../../../core/say/dates.ts";
import { anew as words } from "../../../../core/say/rooms/plan.ts";
import type { AcceptedPayload } from "../../../server/plan-maker-messages.ts";
import { LOCALE } from "../../frame/reader.ts";
import { DoButton } from "../../item/do-button.tsx";
import { useWhyNot } from "../../item/use-why-not.ts";
import { writeAs } from "../../link/tablet-link.ts";
import { useNotice } from "../../walls/notice.tsx";
import { linkTo } from "../../walls/where.ts";
import { useWriter } from "../../walls/writer.tsx";

interface AcceptedProps {
  readonly accepted: AcceptedPayload;
  /** Whether the log knows it. */
  readonly isLogged: boolean;
  readonly taken: () => void;
  readonly again: () => void;
}

/** The new plan is the plan. It is written into the log, so that every other device takes it along; there is no taking back but another plan. */
export function Accepted({ accepted, isLogged, taken, again }: AcceptedProps) {
  const { person } = useWriter();
  const tell = useNotice();
  const whyNot = useWhyNot("planAccepted");
  const tried = useRef(false);
  const day = sayDay(accepted.from, LOCALE, "full");
  const log = useCallback(async () => {
    const written = await writeAs(person, [{ kind: "planAccepted", payload: accepted }]);
    const [problem] = written.ok ? [] : written.problems;
    if (problem) tell({ problem });
  }, [person, accepted, tell]);
  // once; where it could not be written the button stands
  useEffect(() => {
    taken();
    if (isLogged || whyNot !== null || tried.current) return;
    tried.current = true;
    void log();
  }, [isLogged, whyNot, taken, log]);
  return (
    <>
      <p role="status">
        <strong>{words.accepted(day)}</strong> {words.acceptedHelp}
      </p>
      {!isLogged && (
        <>
          <p>{words.notLogged}</p>
          <DoButton isMain whyNot={whyNot} act={() => void log()}>
            {words.writeLog}
          </DoButton>
        </>
      )}
      <p className="anew-actions">
        <a href={linkTo("plan", "papers")}>{words.toPapers}</a>
        <button type="button" onClick={again}>
          {words.begin}
        </button>
      </p>
    </>
  );
}
