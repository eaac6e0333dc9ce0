import { sayPercent } from "../../../core/say/dates.ts";
import { form as words } from "../../../core/say/rooms/ward.ts";
import { NumberForm } from "../entry/number-form.tsx";
import { LOCALE } from "../frame/reader.ts";
import { useWhyNot } from "../item/use-why-not.ts";
import { useWrite } from "../link/use-write.ts";
import { askedReading } from "./asked-readings.ts";
import type { BagView } from "./bag-view.ts";

/** A reading through the closed bag: no exposure. */
export function ReadForm({ view, done }: { readonly view: BagView; readonly done: () => void }) {
  const write = useWrite();
  const whyNot = useWhyNot("bagRead");
  const { bag, items, day, minute } = view;
  return (
    <NumberForm
      draft={`ward read ${bag}`}
      asked={askedReading(view.entries)}
      whyNot={whyNot}
      save={async ({ relHum = 0, dryBulb }) => {
        const payload = {
          ...{ bag, items: items.map(({ id }) => id), day, minute },
          relHum: relHum / 100,
          ...(dryBulb === undefined ? {} : { dryBulb }),
        };
        const said = words.saidRead(bag, sayPercent(relHum / 100, LOCALE, 1));
        const isWritten = (await write(said, { kind: "bagRead", payload })) === null;
        if (isWritten) done();
        return isWritten;
      }}
    />
  );
}
