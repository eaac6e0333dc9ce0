import { type ReactNode, useEffect, useRef } from "react";
import { bag as words } from "../../../core/say/rooms/ward.ts";
import type { BagView } from "./bag-view.ts";
import { FreezerForm } from "./freezer-form.tsx";
import { GelForm } from "./gel-form.tsx";
import { LidForm } from "./lid-form.tsx";
import { ReadForm } from "./read-form.tsx";
import { ReleaseForm } from "./release-form.tsx";
import { WeighForm } from "./weigh-form.tsx";

interface FormProps {
  readonly view: BagView;
  readonly done: () => void;
}
const FORMS: Readonly<Record<string, (p: FormProps) => ReactNode>> = {
  read: ReadForm,
  gel: GelForm,
  weigh: WeighForm,
  lid: LidForm,
  release: ReleaseForm,
  freezer: FreezerForm,
};

/** What can be done to a bag, one form at a time.   @param p.act the open one; empty: none */
export function BagActs(p: {
  readonly view: BagView;
  readonly act: string;
  readonly choose: (act: string) => void;
}) {
  const { view, act } = p;
  const Form = FORMS[act];
  const panel = useRef<HTMLDivElement>(null);
  const buttons = useRef<HTMLDivElement>(null);
  const last = useRef(act);
  // the focus goes into the form that opens, and back to its button
  useEffect(() => {
    if (act !== "" && panel.current && !panel.current.contains(document.activeElement)) panel.current.focus();
    if (act === "" && last.current !== "")
      buttons.current?.querySelector<HTMLElement>(`[data-act="${last.current}"]`)?.focus();
    last.current = act;
  }, [act]);
  const choices: readonly (readonly [act: string, name: string])[] = [
    ...(view.isOpen || view.isInFreezer ? [] : ([["read", words.read]] as const)),
    ...(view.isInFreezer
      ? []
      : ([
          ["gel", words.gel],
          ["weigh", words.weigh],
          ["lid", view.isOpen ? words.close : words.open],
          ["release", words.release],
        ] as const)),
    ...(view.placeHasFreezer || view.isInFreezer ? ([["freezer", words.freezer]] as const) : []),
  ];
  return (
    <div className="bag-acts">
      <div ref={buttons} className="bag-acts-buttons" role="group" aria-label={words.acts}>
        {choices.map(([each, name]) => (
          <button
            key={each}
            type="button"
            data-act={each}
            aria-expanded={each === act}
            onClick={() => p.choose(each === act ? "" : each)}
          >
            {name}
          </button>
        ))}
      </div>
      {Form && (
        <div
          ref={panel}
          className="bag-acts-panel"
          tabIndex={-1}
          role="region"
          aria-label={nameOf(choices, act)}
        >
          <Form key={act} view={view} done={() => p.choose("")} />
          <button type="button" onClick={() => p.choose("")}>
            {words.cancel}
          </button>
        </div>
      )}
    </div>
  );
}

const nameOf = (choices: readonly (readonly [string, string])[], act: string): string =>
  choices.find(([each]) => each === act)?.[1] ?? words.acts;
