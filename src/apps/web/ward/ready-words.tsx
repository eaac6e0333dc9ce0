import { sayDay } from "../../../core/say/dates.ts";
import { ready as readyWords, bag as words } from "../../../core/say/rooms/ward.ts";
import { addDays } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";
import { Section } from "../frame/section.tsx";
import type { BagView } from "./bag-view.ts";

/** When it may be ready, as a band and by what; or why no date is known yet. */
export function ReadyWords({ view }: { readonly view: BagView }) {
  const { band, noDate, day } = view;
  if (band === null) return null;
  const on = (days: number): string => sayDay(addDays(day, Math.max(0, Math.ceil(days))), LOCALE, "short");
  return (
    <Section id="expected" heading={words.expected}>
      <p>{readyWords[band.from](on(band.typical), on(band.low), on(band.high))}</p>
      {view.hasGel && band.from === "readings" && band.typical <= 1 && <p>{readyWords.gelOut}</p>}
      {noDate.length > 0 && (
        <>
          <p>{words.because}</p>
          <ul className="bag-screen-holds">
            {noDate.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </>
      )}
    </Section>
  );
}
