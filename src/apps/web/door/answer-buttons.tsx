import { type FormEvent, useState } from "react";
import type { AnswerChoices } from "../../../core/log/answer-choices.ts";
import { door, sayAnswer } from "../../../core/say/rooms/door.ts";
import "./answer-buttons.css";

interface Props {
  readonly choices: AnswerChoices;
  /** Null: an answer can be written. */
  readonly whyNot: string | null;
  readonly answer: (answer: string | number) => void;
}

/** The answers of a test, each one tap; unsure is always among them. */
export function AnswerButtons(p: Props) {
  const { choices } = p;
  return (
    <div className="answer-buttons">
      {choices.kind === "number" ? (
        <NumberAnswer {...p} choices={choices} />
      ) : (
        choices.words.map((each) => <AnswerButton key={each} {...p} value={each} />)
      )}
      <AnswerButton {...p} value="unsure" />
      {p.whyNot !== null && <p className="quiet">{p.whyNot}</p>}
    </div>
  );
}

const AnswerButton = (p: Props & { readonly value: string | number }) => (
  <button
    type="button"
    className="answer-button"
    aria-disabled={p.whyNot !== null}
    onClick={() => p.whyNot === null && p.answer(p.value)}
  >
    {sayAnswer(p.value)}
  </button>
);

type NumberProps = Props & { readonly choices: Extract<AnswerChoices, { readonly kind: "number" }> };

function NumberAnswer({ choices: { least, most, unit }, whyNot, answer }: NumberProps) {
  const [text, setText] = useState("");
  const [isOut, setOut] = useState(false);
  function write(event: FormEvent): void {
    event.preventDefault();
    const value = Number(text.replace(",", "."));
    const fits = text.trim() !== "" && value >= least && value <= most;
    setOut(!fits);
    if (fits && whyNot === null) answer(value);
  }
  return (
    <form className="answer-number" onSubmit={write}>
      <label>
        {door.number(least, most, unit)}
        <input
          inputMode="decimal"
          value={text}
          autoComplete="off"
          aria-invalid={isOut}
          onChange={({ target }) => setText(target.value)}
        />
      </label>
      <button type="submit" aria-disabled={whyNot !== null}>
        {door.saidNumber}
      </button>
      <p role="alert">{isOut && door.numberOut}</p>
    </form>
  );
}
