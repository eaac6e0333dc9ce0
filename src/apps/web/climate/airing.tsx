import { useEffect, useRef, useState } from "react";
import type { Air } from "../../../core/physics/air/airing.ts";
import { AIRING_CAUTIONS, AIRING_TODO, sayAiringVerdict } from "../../../core/say/damp/air-out.ts";
import { sayNumber, sayPercent } from "../../../core/say/dates.ts";
import { climate, airing as words } from "../../../core/say/rooms/climate.ts";
import { TYPED, typedDoubt } from "../../../core/ward/typed-doubt.ts";
import { NumberForm } from "../entry/number-form.tsx";
import { ScreenTitle } from "../entry/screen-title.tsx";
import { useLast } from "../entry/use-last.ts";
import { LOCALE } from "../frame/reader.ts";
import { useView } from "../link/use-view.ts";
import { goTo, linkTo } from "../walls/where.ts";
import { sayAir, sayAt } from "./air-words.ts";
import "./climate.css";
import type { AiringAnswer } from "./views.ts";

/** Whether opening the windows would dry a store now: by the water in the air, never by per cent. */
export function Airing({ store }: { readonly store: string }) {
  const cards = useView("climateReaders")?.filter(({ state }) => state !== null);
  const name = store === "" ? (cards?.[0]?.name ?? "") : store;
  const [outside, setOutside] = useState<Air | null>(null);
  const view = useLast(useView("climateAiring", name, outside));
  return (
    <>
      <div>
        <p>
          <a href={linkTo("climate")}>{climate.back}</a>
        </p>
        <ScreenTitle>{words.title}</ScreenTitle>
        <p className="quiet">{words.intro}</p>
      </div>
      <div className="climate-spans" role="group" aria-label={words.store}>
        {cards?.map((each) => (
          <button
            key={each.name}
            type="button"
            aria-pressed={each.name === name}
            onClick={() => {
              setOutside(null);
              goTo("climate", "air", each.name);
            }}
          >
            {each.name}
          </button>
        ))}
      </div>
      {view && (
        <p>
          <strong>{words.inside(sayAir(view.inside), sayAt(view.at))}</strong> {view.isOld && words.insideOld}
        </p>
      )}
      {view && (
        <NumberForm
          key={name}
          draft="climate outside"
          asked={askedOf(view.outdoor?.at ?? "", view.outdoor ?? {})}
          whyNot={null}
          saveWords={words.ask}
          save={async ({ relHum = 0, dryBulb = 0 }) => {
            setOutside({ relHum: relHum / 100, dryBulb });
            return false; // it stays typed, for the next store
          }}
        />
      )}
      {view?.answer && <Answer answer={view.answer} />}
    </>
  );
}

function Answer({ answer: { advice, inGrams, outGrams } }: { readonly answer: AiringAnswer }) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => place.current?.scrollIntoView({ block: "nearest" }), []);
  const wets = advice.cautions.includes("airing-would-wet-cold-surfaces");
  const grams = (n: number): string => sayNumber(n, LOCALE, 1);
  return (
    <div ref={place} className="climate-answer" role="status">
      <p className="climate-figure">
        <strong>{sayAiringVerdict(advice, wets)}</strong>
      </p>
      <p>
        {words.water(grams(inGrams), grams(outGrams))}{" "}
        {words.would(sayPercent(Math.min(1, advice.relHumThen), LOCALE))}
      </p>
      <ul className="climate-lines">
        {[
          ...AIRING_TODO[advice.windows],
          ...(advice.windows === "open" ? Object.values(AIRING_CAUTIONS) : []),
        ].map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </div>
  );
}

const askedOf = (at: string, { relHum, dryBulb }: { readonly relHum?: number; readonly dryBulb?: number }) =>
  [
    {
      ...{ name: "relHum", label: words.outRelHum, isNeeded: true },
      before: relHum === undefined ? null : { value: relHum * 100, when: sayAt(at) },
      doubt: (value: number) => typedDoubt(value / 100, TYPED.relHum, null),
      says: (value: number) => sayPercent(value / 100, LOCALE, 1),
    },
    {
      ...{ name: "dryBulb", label: words.outDryBulb, isNeeded: true, isSigned: true },
      before: dryBulb === undefined ? null : { value: dryBulb, when: sayAt(at) },
      doubt: (value: number) => typedDoubt(value, { ...TYPED.dryBulb, usual: [-25, 48] }, null),
      says: (value: number) => `${sayNumber(value, LOCALE, 1)} °C`,
    },
  ] as const;
