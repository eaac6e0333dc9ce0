import { sayNumber, sayPercent } from "../../../core/say/dates.ts";
import { form as words } from "../../../core/say/rooms/ward.ts";
import { TYPED, typedDoubt, weightDoubt } from "../../../core/ward/typed-doubt.ts";
import type { NumberAsked } from "../entry/number-form.tsx";
import { LOCALE } from "../frame/reader.ts";
import type { BagEntry, BagItem } from "./bag-view.ts";
import { sayWhen } from "./when.ts";

/** The figures of a reading; relative humidity in per cent, as the reader shows it. */
export function askedReading(entries: readonly BagEntry[]): readonly NumberAsked[] {
  const reads = entries.filter(({ what }) => what === "read");
  const last = reads.at(-1);
  const warm = reads.findLast(({ dryBulb }) => dryBulb !== null);
  const quiet = entries.at(-1)?.what === "read"; // nothing was done to the bag since
  return [
    {
      name: "relHum",
      label: words.relHum,
      isNeeded: true,
      before: last ? { value: (last.value ?? 0) * 100, when: sayWhen(last) } : null,
      doubt: (value, before) =>
        typedDoubt(value / 100, TYPED.relHum, before === null || !quiet ? null : before / 100),
      says: (value) => sayPercent(value / 100, LOCALE, 1),
    },
    {
      name: "dryBulb",
      label: words.dryBulb,
      isNeeded: false,
      before: warm ? { value: warm.dryBulb ?? 0, when: sayWhen(warm) } : null,
      doubt: (value, before) => typedDoubt(value, TYPED.dryBulb, before),
      says: (value) => `${sayNumber(value, LOCALE, 1)} °C`,
    },
  ];
}

export const sayGrams = (grams: number): string => `${sayNumber(grams, LOCALE, 1)} g`;

export function askedWeight({ weighings }: BagItem): NumberAsked {
  const last = weighings.at(-1);
  return {
    name: "grams",
    label: words.grams,
    isNeeded: true,
    before: last ? { value: last.grams, when: sayWhen(last) } : null,
    doubt: weightDoubt,
    says: sayGrams,
  };
}
