import { useId } from "react";
import { sayMinutes } from "../../../core/say/dates.ts";
import { form as words } from "../../../core/say/rooms/ward.ts";
import { LOCALE } from "../frame/reader.ts";
import "./minutes-near.css";

/** Minutes near mould, more or fewer by a press. */
export function MinutesNear(p: { readonly minutes: number; readonly change: (minutes: number) => void }) {
  const help = useId();
  return (
    <div className="minutes-near" role="group" aria-label={words.minutes} aria-describedby={help}>
      <span>{words.minutes}</span>
      <button
        type="button"
        aria-label={words.less(words.minutes)}
        onClick={() => p.change(Math.max(1, p.minutes - 1))}
      >
        −
      </button>
      <output aria-live="polite">{sayMinutes(p.minutes, LOCALE)}</output>
      <button
        type="button"
        aria-label={words.more(words.minutes)}
        onClick={() => p.change(Math.min(240, p.minutes + 1))}
      >
        +
      </button>
      <span id={help} className="quiet">
        {words.minutesHelp}
      </span>
    </div>
  );
}
