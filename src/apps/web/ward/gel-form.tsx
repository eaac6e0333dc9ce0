import { useState } from "react";
import { form as words } from "../../../core/say/rooms/ward.ts";
import { NumberForm, type Typed } from "../entry/number-form.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useWrite } from "../link/use-write.ts";
import type { Draft } from "../log/own-entries.ts";
import { useWriter } from "../walls/writer.tsx";
import { sayGrams } from "./asked-readings.ts";
import type { BagView } from "./bag-view.ts";
import { MinutesNear } from "./minutes-near.tsx";
import { NearCaution, useNearStop } from "./near-caution.tsx";
import { spellNear } from "./spell.ts";

type Way = "in" | "swap" | "out";
const SAID = { in: words.gelIn, swap: words.gelSwap, out: words.gelOut } as const;
const MOST_GRAMS = 20_000;

/** Gel put in, changed for dry, or taken out. */
export function GelForm({ view, done }: { readonly view: BagView; readonly done: () => void }) {
  const { bag, hasGel, near } = view;
  const ways: readonly Way[] = hasGel ? ["swap", "out"] : ["in"];
  const [way, setWay] = useState<Way>(view.due.task === "take-gel-out-now" ? "out" : (ways[0] ?? "in"));
  const [minutes, setMinutes] = useState(near.minutes.open);
  const write = useWrite();
  const { person } = useWriter();
  const mayNot = useWhyNot("gelChanged", ...(near.isExposed ? (["sessionWorked"] as const) : []));
  const whyNot = mayNot ?? useNearStop(near);
  async function save({ grams }: Typed): Promise<boolean> {
    const at = { bag, items: view.items.map(({ id }) => id), day: view.day, minute: view.minute };
    const drafts: Draft[] = [
      ...(way === "in" ? [] : [{ kind: "gelChanged" as const, payload: { ...at, way: "out" as const } }]),
      ...(way === "out"
        ? []
        : [
            {
              kind: "gelChanged" as const,
              payload: { ...at, way: "in" as const, ...(grams === undefined ? {} : { grams }) },
            },
          ]),
      ...spellNear(near, person, view, minutes, "release"),
    ];
    const isWritten = (await write(words.saidGel(bag, SAID[way]), ...drafts)) === null;
    if (isWritten) done();
    return isWritten;
  }
  const grams = {
    ...{ name: "grams", label: words.gelGrams, isNeeded: false, before: null, says: sayGrams },
    doubt: (value: number) => (value > 0 && value <= MOST_GRAMS ? null : ("impossible" as const)),
  };
  return (
    <>
      <NearCaution near={near} />
      <div className="bag-screen-choice" role="group" aria-label={words.gelHelp}>
        {ways.map((each) => (
          <button key={each} type="button" aria-pressed={each === way} onClick={() => setWay(each)}>
            {SAID[each]}
          </button>
        ))}
      </div>
      <p className="quiet">{words.gelHelp}</p>
      {near.isExposed && <MinutesNear minutes={minutes} change={setMinutes} />}
      <NumberForm
        key={way === "out" ? "out" : "in"}
        draft={`ward gel ${bag}`}
        asked={way === "out" ? [] : [grams]}
        whyNot={whyNot}
        save={save}
      />
    </>
  );
}
