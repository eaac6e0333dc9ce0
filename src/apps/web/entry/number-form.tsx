import { useEffect, useRef, useState } from "react";
import { entry as words } from "../../../core/say/rooms/entry.ts";
import type { TypedDoubt } from "../../../core/ward/typed-doubt.ts";
import { DoButton } from "../item/do-button.tsx";
import { useDraft } from "../walls/use-draft.ts";
import { AskAgain } from "./ask-again.tsx";
import "./number-form.css";
import { NumberPad } from "./number-pad.tsx";

/** A figure somebody is asked for. */
export interface NumberAsked {
  readonly name: string;
  readonly label: string;
  readonly isNeeded: boolean;
  /** Whether it may be below nought. */
  readonly isSigned?: boolean;
  readonly before: { readonly value: number; readonly when: string } | null;
  readonly doubt: (value: number, before: number | null) => TypedDoubt | null;
  /** With its unit: `57 %`. */
  readonly says: (value: number) => string;
}
export type Typed = Readonly<Record<string, number | undefined>>;

const numberOf = (text: string): number | undefined =>
  text.trim() === "" ? undefined : Number(text.trim().replace(",", "."));

/** Figures typed with gloves on, the value before beside each; what may be a slip is asked again.   @param p.save whether it was written */
export function NumberForm(p: {
  readonly draft: string;
  readonly asked: readonly NumberAsked[];
  readonly save: (typed: Typed) => Promise<boolean>;
  readonly whyNot: string | null;
  readonly saveWords?: string;
}) {
  const [texts, setTexts, forget] = useDraft<Readonly<Record<string, string>>>(p.draft, NOTHING);
  const [active, setActive] = useState(p.asked[0]?.name ?? "");
  const [doubted, setDoubted] = useState<NumberAsked | null>(null);
  const fields = useRef<HTMLDivElement>(null);
  const focus = (name: string): void =>
    fields.current?.querySelector<HTMLElement>(`[name="${name}"]`)?.focus();
  useEffect(() => fields.current?.querySelector("input")?.focus(), []);
  const typed: Typed = Object.fromEntries(p.asked.map(({ name }) => [name, numberOf(texts[name] ?? "")]));
  const missing = p.asked.find(({ name, isNeeded }) => isNeeded && typed[name] === undefined);
  const doubtOf = ({ name, doubt, before }: NumberAsked): TypedDoubt | null => {
    const value = typed[name];
    return value === undefined ? null : doubt(value, before?.value ?? null);
  };
  function change(name: string, text: string): void {
    setDoubted(null);
    setTexts({ ...texts, [name]: text });
  }
  async function save(): Promise<void> {
    setDoubted(null);
    if (await p.save(typed)) forget();
  }
  const whyNot = p.whyNot ?? (missing ? words.missing : null);
  function tryToSave(): void {
    const odd = p.asked.find((each) => doubtOf(each) !== null);
    if (odd) setDoubted(odd);
    else void save();
  }
  return (
    <div className="number-form">
      <div ref={fields} className="number-form-fields">
        {p.asked.map(({ name, label, before, says }) => (
          <label key={name} data-active={name === active}>
            <span>{label}</span>
            <input
              name={name}
              inputMode="none"
              autoComplete="off"
              value={texts[name] ?? ""}
              onFocus={() => setActive(name)}
              onKeyDown={(event) => {
                if (event.key !== "Enter") return;
                event.preventDefault(); // or the same press would answer what is asked again
                if (whyNot === null) tryToSave();
              }}
              onChange={({ target }) => change(name, target.value.replace(/[^\d.,-]/g, "").slice(0, 8))}
            />
            <span className="quiet">
              {before ? words.before(says(before.value), before.when) : words.nothingBefore}
            </span>
          </label>
        ))}
      </div>
      {p.asked.length > 0 && (
        <NumberPad
          value={texts[active] ?? ""}
          isSigned={p.asked.some(({ name, isSigned }) => name === active && isSigned)}
          change={(text) => change(active, text)}
        />
      )}
      {doubted && (
        <AskAgain
          says={words.doubt[doubtOf(doubted) ?? "unusual"](
            doubted.says(typed[doubted.name] ?? 0),
            doubted.before ? doubted.says(doubted.before.value) : "",
          )}
          yes={doubtOf(doubted) === "impossible" ? null : words.sure(doubted.says(typed[doubted.name] ?? 0))}
          confirm={() => void save()}
          again={() => {
            change(doubted.name, "");
            focus(doubted.name);
          }}
        />
      )}
      {doubted === null && (
        <DoButton isMain whyNot={whyNot} act={tryToSave}>
          {p.saveWords ?? words.save}
        </DoButton>
      )}
    </div>
  );
}

const NOTHING: Readonly<Record<string, string>> = {};
