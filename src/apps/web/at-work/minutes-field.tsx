import { useId } from "react";
import { atWork as words } from "../../../core/say/rooms/at-work.ts";
import "./minutes-field.css";

const STEP = 5;

/** Minutes, typed or by big buttons five at a time. */
export function MinutesField(p: {
  readonly label: string;
  readonly value: string;
  readonly change: (value: string) => void;
  readonly help?: string;
}) {
  const [field, help] = [useId(), useId()];
  const by = (minutes: number): void => p.change(String(Math.max(0, (minutesIn(p.value) ?? 0) + minutes)));
  return (
    <div className="minutes-field">
      <label htmlFor={field}>{p.label}</label>
      <div className="minutes-field-row">
        <button type="button" aria-label={`${p.label}: ${words.less}`} onClick={() => by(-STEP)}>
          −{STEP}
        </button>
        <input
          id={field}
          inputMode="numeric"
          autoComplete="off"
          value={p.value}
          {...(p.help ? { "aria-describedby": help } : {})}
          onChange={({ target }) => p.change(target.value)}
        />
        <button type="button" aria-label={`${p.label}: ${words.more}`} onClick={() => by(STEP)}>
          +{STEP}
        </button>
      </div>
      {p.help && (
        <p className="quiet" id={help}>
          {p.help}
        </p>
      )}
    </div>
  );
}

/** What was typed as minutes of a day; null: it is none. */
export function minutesIn(text: string): number | null {
  const minutes = text.trim() === "" ? Number.NaN : Number(text.replace(",", "."));
  return minutes >= 0 && minutes <= 1440 ? minutes : null;
}
