import { form as words } from "../../../core/say/rooms/ward.ts";
import { NumberForm } from "../entry/number-form.tsx";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useWrite } from "../link/use-write.ts";
import type { BagView } from "./bag-view.ts";

const MOST_HOURS = 240;

/** Into the freezer, out of it, and what a power cut did. */
export function FreezerForm({ view, done }: { readonly view: BagView; readonly done: () => void }) {
  const { bag, isInFreezer, items, shelf, day, minute } = view;
  const write = useWrite();
  const whyNot = useWhyNot("itemMoved");
  const whyNoCut = useWhyNot("powerCut");
  async function move(): Promise<void> {
    const place = { room: "Ward", bag, ...(shelf === "" ? {} : { shelf }), freezer: !isInFreezer } as const;
    const moves = items.map(({ id }) => ({
      kind: "itemMoved" as const,
      payload: { item: id, ...place, day, minute },
    }));
    if ((await write(words.saidFreezer(bag, !isInFreezer), ...moves)) === null) done();
  }
  const hours = {
    ...{ name: "hours", label: words.powerCut, isNeeded: true, before: null },
    says: (value: number) => `${value} h`,
    doubt: (value: number) =>
      !(value > 0 && value < 10_000)
        ? ("impossible" as const)
        : value > MOST_HOURS
          ? ("unusual" as const)
          : null,
  };
  return (
    <>
      <p>{isInFreezer ? words.thawHelp : words.freezerHelp}</p>
      <DoButton isMain whyNot={whyNot} act={() => void move()}>
        {isInFreezer ? words.outOfFreezer : words.intoFreezer}
      </DoButton>
      {isInFreezer && (
        <details className="bag-screen-more">
          <summary>{words.powerCut}</summary>
          <p className="quiet">{words.powerCutHelp}</p>
          <NumberForm
            draft="ward power cut"
            asked={[hours]}
            whyNot={whyNoCut}
            saveWords={words.powerCutSave}
            save={async ({ hours: length = 0 }) => {
              const payload = { day, minute, hours: length };
              const isWritten = (await write(words.saidPowerCut, { kind: "powerCut", payload })) === null;
              if (isWritten) done();
              return isWritten;
            }}
          />
        </details>
      )}
    </>
  );
}
