import { listing, sayWord } from "../../../core/say/rooms/door.ts";
import { Fold } from "../item/fold.tsx";
import "./fields.css";

/** Words or a number, typed. */
export const Typed = (p: {
  readonly words: string;
  readonly value: string;
  readonly put: (text: string) => void;
  readonly isNumber?: boolean;
  readonly isWide?: boolean;
  readonly most?: number;
  readonly suggestions?: string;
}) => (
  <label className="typed" data-wide={p.isWide ?? false}>
    {p.words}
    <input
      value={p.value}
      autoComplete="off"
      {...(p.isNumber ? { inputMode: "decimal" as const } : {})}
      {...(p.most === undefined ? {} : { maxLength: p.most })}
      {...(p.suggestions === undefined ? {} : { list: p.suggestions })}
      onChange={({ target }) => p.put(target.value)}
    />
  </label>
);

/** One word of the vocabulary, or none. */
export const Chosen = (p: {
  readonly words: string;
  readonly choices: readonly string[];
  readonly value: string;
  readonly put: (choice: string) => void;
}) => (
  <label className="typed">
    {p.words}
    <select value={p.value} onChange={({ target }) => p.put(target.value)}>
      <option value="">{listing.nothing}</option>
      {p.choices.map((each) => (
        <option key={each} value={each}>
          {sayWord(each)}
        </option>
      ))}
    </select>
  </label>
);

/** One of a few that matter most, each one tap. */
export const ChoiceTiles = (p: {
  readonly words: string;
  readonly choices: readonly string[];
  readonly value: string;
  readonly put: (choice: string) => void;
}) => (
  <fieldset className="tiles">
    <legend>{p.words}</legend>
    {p.choices.map((each) => (
      <label key={each}>
        <input type="radio" name={p.words} checked={p.value === each} onChange={() => p.put(each)} />
        {sayWord(each)}
      </label>
    ))}
  </fieldset>
);

/** Several words of the vocabulary; folded away until wanted. */
export const Several = (p: {
  readonly words: string;
  readonly choices: readonly string[];
  readonly values: readonly string[];
  readonly put: (choices: readonly string[]) => void;
}) => (
  <Fold words={`${p.words}: ${p.values.length === 0 ? listing.nothing : p.values.map(sayWord).join(", ")}`}>
    <fieldset className="tiles">
      <legend className="unseen">{p.words}</legend>
      {p.choices.map((each) => (
        <label key={each}>
          <input
            type="checkbox"
            checked={p.values.includes(each)}
            onChange={({ target }) =>
              p.put(target.checked ? [...p.values, each] : p.values.filter((value) => value !== each))
            }
          />
          {sayWord(each)}
        </label>
      ))}
    </fieldset>
  </Fold>
);
