import { useEffect, useRef } from "react";
import { sayDay } from "../../../../core/say/dates.ts";
import { anew as words } from "../../../../core/say/rooms/plan.ts";
import type { AcceptedPayload } from "../../../server/plan-maker-messages.ts";
import { LOCALE } from "../../frame/reader.ts";
import { DoButton } from "../../item/do-button.tsx";
import { useWhyNot } from "../../item/use-why-not.ts";
import { useWrite } from "../../link/use-write.ts";
import { linkTo } from "../../walls/where.ts";

interface AcceptedProps {
  readonly accepted: AcceptedPayload;
  /** Whether the log knows it. */
  readonly isLogged: boolean;
  readonly taken: () => void;
  readonly again: () => void;
}

/** The new plan is the plan. It is written into the log, so that every other device takes it along. */
export function Accepted({ accepted, isLogged, taken, again }: AcceptedProps) {
  const write = useWrite();
  const whyNot = useWhyNot("planAccepted");
  const tried = useRef(false);
  const day = sayDay(accepted.from, LOCALE, "full");
  // once; where it could not be written the button stands
  useEffect(() => {
    taken();
    if (isLogged || whyNot !== null || tried.current) return;
    tried.current = true;
    void write(words.saidAccepted(day), { kind: "planAccepted", payload: accepted });
  }, [accepted, isLogged, whyNot, write, taken, day]);
  return (
    <>
      <p role="status">
        <strong>{words.accepted(day)}</strong> {words.acceptedHelp}
      </p>
      {!isLogged && (
        <>
          <p>{words.notLogged}</p>
          <DoButton
            isMain
            whyNot={whyNot}
            act={() => void write(words.saidAccepted(day), { kind: "planAccepted", payload: accepted })}
          >
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
