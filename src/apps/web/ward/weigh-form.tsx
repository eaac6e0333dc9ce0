import { useState } from "react";
import { form as words } from "../../../core/say/rooms/ward.ts";
import { NumberForm } from "../entry/number-form.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useWrite } from "../link/use-write.ts";
import { useWriter } from "../walls/writer.tsx";
import { askedWeight, sayGrams } from "./asked-readings.ts";
import type { BagView } from "./bag-view.ts";
import { MinutesNear } from "./minutes-near.tsx";
import { NearCaution, useNearStop } from "./near-caution.tsx";
import { spellNear } from "./spell.ts";

/** An item on the scale, bag and gel off. */
export function WeighForm({ view, done }: { readonly view: BagView; readonly done: () => void }) {
  const { items, near, day, minute } = view;
  const [which, setWhich] = useState(items.length === 1 ? (items[0]?.id ?? "") : "");
  const [minutes, setMinutes] = useState(near.minutes.open);
  const write = useWrite();
  const { person } = useWriter();
  const mayNot = useWhyNot("bagWeighed", ...(near.isExposed ? (["sessionWorked"] as const) : []));
  const whyNot = mayNot ?? useNearStop(near);
  const item = items.find(({ id }) => id === which);
  return (
    <>
      <NearCaution near={near} />
      <p>{words.weighWhat}</p>
      <div className="bag-screen-choice" role="group" aria-label={words.weighWhat}>
        {items.map(({ id }) => (
          <button key={id} type="button" aria-pressed={id === which} onClick={() => setWhich(id)}>
            {id}
          </button>
        ))}
      </div>
      {near.isExposed && <MinutesNear minutes={minutes} change={setMinutes} />}
      {item && (
        <NumberForm
          key={item.id}
          draft={`ward weigh ${item.id}`}
          asked={[askedWeight(item)]}
          whyNot={whyNot}
          save={async ({ grams = 0 }) => {
            const payload = { item: item.id, day, minute, grams };
            const isWritten =
              (await write(
                words.saidWeighed(item.id, sayGrams(grams)),
                { kind: "bagWeighed", payload },
                ...spellNear(near, person, view, minutes, "release"),
              )) === null;
            if (isWritten) done();
            return isWritten;
          }}
        />
      )}
    </>
  );
}
