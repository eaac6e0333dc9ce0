import { useState } from "react";
import { sayNumber, sayPercent } from "../../../core/say/dates.ts";
import { climate, writeReading as words } from "../../../core/say/rooms/climate.ts";
import { TYPED, typedDoubt } from "../../../core/ward/typed-doubt.ts";
import { type NumberAsked, NumberForm } from "../entry/number-form.tsx";
import { ScreenTitle } from "../entry/screen-title.tsx";
import { LOCALE } from "../frame/reader.ts";
import { useWhyNot } from "../item/use-why-not.ts";
import { useStatus, useView } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import { goTo, linkTo } from "../walls/where.ts";
import { sayAir, sayAt } from "./air-words.ts";
import "./climate.css";
import type { ReaderCard } from "./views.ts";

/** What a reader shows, written down by hand.   @param p.reader chosen before; empty: none */
export function WriteReading(p: { readonly reader: string }) {
  const cards = useView("climateReaders");
  const status = useStatus();
  const [name, setName] = useState(p.reader);
  const [isNew, setNew] = useState(false);
  const write = useWrite();
  const mayNot = useWhyNot("readerRead");
  const card = cards?.find((each) => each.name === name.trim());
  const reader = name.trim();
  return (
    <>
      <div>
        <p>
          <a href={linkTo("climate")}>{climate.back}</a>
        </p>
        <ScreenTitle>{words.title}</ScreenTitle>
        <p className="quiet">{words.help}</p>
      </div>
      <div className="climate-spans" role="group" aria-label={words.reader}>
        {cards?.map((each) => (
          <button
            key={each.name}
            type="button"
            aria-pressed={!isNew && each.name === name}
            onClick={() => {
              setName(each.name);
              setNew(false);
            }}
          >
            {each.name}
          </button>
        ))}
        <button
          type="button"
          aria-pressed={isNew}
          onClick={() => {
            setName("");
            setNew(true);
          }}
        >
          {words.new}
        </button>
      </div>
      {isNew && (
        <label className="climate-field">
          <span>{words.name}</span>
          <input
            value={name}
            maxLength={60}
            autoComplete="off"
            onChange={({ target }) => setName(target.value)}
          />
        </label>
      )}
      {(reader !== "" || isNew) && (
        <NumberForm
          key={isNew ? "" : reader}
          draft={`climate ${isNew ? "" : reader}`}
          asked={askedOf(card)}
          whyNot={mayNot ?? (reader === "" ? words.noName : null)}
          save={async ({ relHum = 0, dryBulb }) => {
            const reading = { relHum: relHum / 100, ...(dryBulb === undefined ? {} : { dryBulb }) };
            const at = `${status?.today}T${new Date().toTimeString().slice(0, 8)}`;
            const payload = { reader, readings: [{ at, ...reading }] };
            const isWritten =
              (await write(words.said(reader, sayAir(reading)), { kind: "readerRead", payload })) === null;
            if (isWritten) goTo("climate", "reader", reader);
            return isWritten;
          }}
        />
      )}
    </>
  );
}

const askedOf = (card: ReaderCard | undefined): readonly NumberAsked[] => {
  const latest = card?.latest;
  const before = (value: number | undefined): NumberAsked["before"] =>
    latest && value !== undefined ? { value, when: sayAt(latest.at) } : null;
  return [
    {
      ...{ name: "relHum", label: words.relHum, isNeeded: true },
      before: before(latest?.relHum === undefined ? undefined : latest.relHum * 100),
      doubt: (value, last) => typedDoubt(value / 100, TYPED.relHum, last === null ? null : last / 100),
      says: (value) => sayPercent(value / 100, LOCALE, 1),
    },
    {
      ...{
        name: "dryBulb",
        label: words.dryBulb,
        isNeeded: false,
        isSigned: true,
        before: before(latest?.dryBulb),
      },
      doubt: (value, last) => typedDoubt(value, TYPED.dryBulb, last),
      says: (value) => `${sayNumber(value, LOCALE, 1)} °C`,
    },
  ];
};
