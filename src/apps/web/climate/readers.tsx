import { climate as words } from "../../../core/say/rooms/climate.ts";
import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";
import { ScreenTitle } from "../entry/screen-title.tsx";
import { Empty, Section } from "../frame/section.tsx";
import { useView } from "../link/use-view.ts";
import { linkTo } from "../walls/where.ts";
import { sayAir, sayAt } from "./air-words.ts";
import "./climate.css";
import type { ReaderCard } from "./views.ts";

/** Every reader, the worst first. */
export function Readers() {
  const cards = useView("climateReaders");
  return (
    <>
      <div>
        <ScreenTitle>{ROOM_NAMES.climate}</ScreenTitle>
        <p className="quiet">{words.intro}</p>
      </div>
      <p className="climate-ways">
        <a className="climate-way" href={linkTo("climate", "write")}>
          {words.write}
        </a>
        <a className="climate-way" href={linkTo("climate", "air")}>
          {words.airing}
        </a>
      </p>
      {cards?.length === 0 && <Empty title={words.empty} help={words.emptyHelp} />}
      <ul className="climate-readers">
        {cards?.map((card) => (
          <Reader key={card.name} card={card} />
        ))}
      </ul>
      <Section id="logger-files" heading={words.files}>
        <p>{words.filesHelp}</p>
      </Section>
    </>
  );
}

const Reader = ({ card: { name, latest, ageHours, state, verdict } }: { readonly card: ReaderCard }) => (
  <li className="climate-reader" data-state={state ?? "outdoor"}>
    <h2>
      <a href={linkTo("climate", "reader", name)}>{name}</a>
    </h2>
    {latest === null ? (
      <p className="quiet">{words.unread}</p>
    ) : (
      <p>
        <strong className="climate-figure">{sayAir(latest)}</strong>{" "}
        <span className="quiet">{words.latest(sayAt(latest.at))}</span>
      </p>
    )}
    {ageHours > 24 && latest !== null && <p>{words.old}</p>}
    {state !== null && (
      <p>
        <strong>{words.states[state]}</strong> {verdict}
      </p>
    )}
  </li>
);
