import { useState } from "react";
import { climate as words } from "../../../core/say/rooms/climate.ts";
import { ScreenTitle } from "../entry/screen-title.tsx";
import { useLast } from "../entry/use-last.ts";
import { Empty, Section } from "../frame/section.tsx";
import { useView } from "../link/use-view.ts";
import { linkTo } from "../walls/where.ts";
import { AirCurve } from "./air-curve.tsx";
import { AirTable } from "./air-table.tsx";
import { sayAir, sayAt } from "./air-words.ts";
import "./climate.css";
import { Lamps } from "./lamps.tsx";

type Span = keyof typeof words.days;

/** One reader: what it says now, the lamps in words, its days as a curve, what to do. */
export function ReaderScreen({ name }: { readonly name: string }) {
  const [span, setSpan] = useState<Span>("28");
  const view = useLast(useView("climateReader", name, Number(span)));
  const ahead = useView("climateAhead", name);
  const { latest, state, verdict } = view?.card ?? { latest: null, state: null, verdict: "" };
  return (
    <>
      <div>
        <p>
          <a href={linkTo("climate")}>{words.back}</a>
        </p>
        <ScreenTitle>{name}</ScreenTitle>
        {latest && (
          <p>
            <strong className="climate-figure">{sayAir(latest)}</strong>{" "}
            <span className="quiet">{words.latest(sayAt(latest.at))}</span>
          </p>
        )}
        {state !== null && (
          <p>
            <strong>{words.states[state]}</strong> {verdict}
          </p>
        )}
      </div>
      <p className="climate-ways">
        <a className="climate-way" href={linkTo("climate", "write", name)}>
          {words.write}
        </a>
        <a className="climate-way" href={linkTo("climate", "air", name)}>
          {words.airing}
        </a>
      </p>
      {view && view.lamps.length > 0 && <Lamps lamps={view.lamps} />}
      {view && view.todo.length > 0 && <Lines id="todo" heading={words.todo} lines={view.todo} />}
      <Section id="air" heading={words.air}>
        <div className="climate-spans" role="group" aria-label={words.span}>
          {(["2", "7", "28", "366"] as const).map((each) => (
            <button key={each} type="button" aria-pressed={each === span} onClick={() => setSpan(each)}>
              {words.days[each]}
            </button>
          ))}
        </div>
        {view && view.points.length > 0 && (
          <>
            <AirCurve view={view} span={words.days[span]} />
            <AirTable days={view.days} />
          </>
        )}
        {view?.points.length === 0 && <Empty title={words.none} help={words.noneHelp} />}
      </Section>
      {ahead && ahead.length > 0 && <Lines id="ahead" heading={words.ahead} lines={ahead} />}
      {view && view.cautions.length > 0 && (
        <Lines id="cautions" heading={words.cautions} lines={view.cautions} />
      )}
    </>
  );
}

const Lines = (p: { readonly id: string; readonly heading: string; readonly lines: readonly string[] }) => (
  <Section id={p.id} heading={p.heading}>
    <ul className="climate-lines">
      {p.lines.map((each) => (
        <li key={each}>{each}</li>
      ))}
    </ul>
  </Section>
);
