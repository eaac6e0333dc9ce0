import { useEffect, useRef } from "react";
import { entry as words } from "../../../core/say/rooms/entry.ts";

/** Asks whether a figure is meant.   @param p.yes null: it cannot be meant */
export function AskAgain(p: {
  readonly says: string;
  readonly yes: string | null;
  readonly confirm: () => void;
  readonly again: () => void;
}) {
  const again = useRef<HTMLButtonElement>(null);
  useEffect(() => again.current?.focus(), []);
  return (
    <div className="ask-again" role="alert">
      <p>
        <strong>{p.says}</strong>
      </p>
      <button ref={again} type="button" onClick={p.again}>
        {words.again}
      </button>
      {p.yes !== null && (
        <button type="button" onClick={p.confirm}>
          {p.yes}
        </button>
      )}
    </div>
  );
}
