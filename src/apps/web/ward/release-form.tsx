import { useState } from "react";
import { leaving as words } from "../../../core/say/rooms/ward.ts";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useView } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import type { BagView } from "./bag-view.ts";
import { MinutesNear } from "./minutes-near.tsx";
import { NearCaution } from "./near-caution.tsx";
import { releaseDrafts } from "./release-drafts.ts";
import { Signer } from "./signer.tsx";

/** Out of the Ward: earned by readings, looked at and signed by two people. */
export function ReleaseForm({ view, done }: { readonly view: BagView; readonly done: () => void }) {
  const earned = view.items.filter(({ isEarned }) => isEarned).map(({ id }) => id);
  const [kept, setKept] = useState<readonly string[]>([]);
  const [looked, setLooked] = useState(false);
  const [signs, setSigns] = useState<readonly [string, string]>(["", ""]);
  const [minutes, setMinutes] = useState(view.near.minutes.release * Math.max(1, earned.length));
  const write = useWrite();
  const people = useView("wardPeople") ?? [];
  const mayNot = useWhyNot("itemReleased", "itemMoved", "bagOpened");
  const leaves = earned.filter((id) => !kept.includes(id));
  const signed = signs.flatMap((code) => people.find((each) => each.code === code) ?? []);
  const [first, second] = signed;
  const whyNot =
    mayNot ??
    (leaves.length === 0
      ? words.notYet
      : !looked
        ? words.unlooked
        : !first || !second || first.code === second.code
          ? words.unsigned
          : null);
  async function release(): Promise<void> {
    if (!first || !second) return;
    const drafts = releaseDrafts(view, leaves, [first, second], minutes);
    if ((await write(words.said(leaves.join(", ")), ...drafts)) === null) done();
  }
  if (earned.length === 0) return <p>{words.notYet}</p>;
  return (
    <div className="release-form">
      <NearCaution near={view.near} />
      {view.items.length > 1 && (
        <fieldset>
          <legend>{words.which}</legend>
          {earned.map((id) => (
            <label key={id} className="tick">
              <input
                type="checkbox"
                checked={!kept.includes(id)}
                onChange={({ target }) =>
                  setKept(target.checked ? kept.filter((each) => each !== id) : [...kept, id])
                }
              />
              {id}
            </label>
          ))}
          {leaves.length < view.items.length && <p className="quiet">{words.rest}</p>}
        </fieldset>
      )}
      <label className="tick">
        <input type="checkbox" checked={looked} onChange={({ target }) => setLooked(target.checked)} />
        {words.looked}
      </label>
      <p className="quiet">{words.lookedHelp}</p>
      <div className="release-form-signers">
        <Signer
          label={words.first}
          people={people}
          near={view.near}
          chosen={signs[0]}
          other={signs[1]}
          choose={(code) => setSigns([code, signs[1]])}
        />
        <Signer
          label={words.second}
          people={people}
          near={view.near}
          chosen={signs[1]}
          other={signs[0]}
          choose={(code) => setSigns([signs[0], code])}
        />
      </div>
      {view.near.isExposed && <MinutesNear minutes={minutes} change={setMinutes} />}
      <DoButton isMain whyNot={whyNot} act={() => void release()}>
        {words.sign}
      </DoButton>
    </div>
  );
}
