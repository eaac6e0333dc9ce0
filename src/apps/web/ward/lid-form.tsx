import { useState } from "react";
import { bag as bagWords, form as words } from "../../../core/say/rooms/ward.ts";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useWrite } from "../link/use-write.ts";
import { useWriter } from "../walls/writer.tsx";
import type { BagView } from "./bag-view.ts";
import { MinutesNear } from "./minutes-near.tsx";
import { NearCaution, useNearStop } from "./near-caution.tsx";
import { spellNear } from "./spell.ts";

/** Opening a bag, or closing it again. */
export function LidForm({ view, done }: { readonly view: BagView; readonly done: () => void }) {
  const { bag, isOpen, near, day, minute } = view;
  const [minutes, setMinutes] = useState(near.minutes.open);
  const write = useWrite();
  const { person } = useWriter();
  const kind = isOpen ? "bagClosed" : "bagOpened";
  const mayNot = useWhyNot(kind, ...(near.isExposed ? (["sessionWorked"] as const) : []));
  const stop = useNearStop(near);
  async function save(): Promise<void> {
    const payload = { bag, items: view.items.map(({ id }) => id), day, minute };
    const said = isOpen ? words.saidClosed(bag) : words.saidOpened(bag);
    // who opened it may always close it again: an open bag harms everybody
    const spell = spellNear(near, person, view, minutes, "release");
    if ((await write(said, { kind, payload }, ...spell)) === null) done();
  }
  return (
    <>
      <NearCaution near={near} />
      <p>{isOpen ? words.closeHelp : words.openHelp}</p>
      {near.isExposed && <MinutesNear minutes={minutes} change={setMinutes} />}
      <DoButton isMain whyNot={mayNot ?? (isOpen ? null : stop)} act={() => void save()}>
        {isOpen ? bagWords.close : bagWords.open}
      </DoButton>
    </>
  );
}
