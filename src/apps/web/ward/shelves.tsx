import { type ReactNode, useDeferredValue, useState } from "react";
import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";
import { ward as words } from "../../../core/say/rooms/ward.ts";
import { ScreenTitle } from "../entry/screen-title.tsx";
import { count } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import { useView } from "../link/use-view.ts";
import { linkTo } from "../walls/where.ts";
import { BagOnShelf } from "./bag-on-shelf.tsx";
import type { BagTile, WardShelf } from "./shelf-view.ts";
import "./shelves.css";
import { useBands } from "./use-bands.ts";
import { sayWhen } from "./when.ts";

type Filter = keyof typeof words.filters;
const FITS: Readonly<Record<Filter, (tile: BagTile) => boolean>> = {
  all: () => true,
  due: ({ due }) => due.isDue,
  release: ({ earned }) => earned > 0,
  freezer: ({ isInFreezer }) => isInFreezer,
  open: ({ isOpen }) => isOpen,
};

/** The shelves of the Ward, and what is to come.   @param at the bag somebody comes back from */
export function Shelves({ at }: { readonly at: string }) {
  const view = useView("wardShelf");
  const [filter, setFilter] = useState<Filter>("all");
  const [typed, setTyped] = useState("");
  const wanted = useDeferredValue(typed.trim().toLowerCase());
  const bands = useBands();
  if (view === null) return <h1>{ROOM_NAMES.ward}</h1>;
  const fits = (tile: BagTile): boolean =>
    FITS[filter](tile) && [tile.bag, ...tile.items].some((each) => each.toLowerCase().includes(wanted));
  const shelves = view.shelves
    .map(({ shelf, bags }) => ({ shelf, bags: bags.filter(fits) }))
    .filter(({ bags }) => bags.length > 0);
  const isEmpty = view.shelves.length + view.loose.length === 0;
  return (
    <>
      <div className="shelves-head">
        <div>
          <ScreenTitle>{ROOM_NAMES.ward}</ScreenTitle>
          <p className="quiet">{words.intro}</p>
          {!isEmpty && (
            <p className="shelves-due">
              <strong>{words.due(count(view.dueCount), count(view.laterToday))}</strong>
            </p>
          )}
        </div>
        <a className="shelves-put-in" href={linkTo("ward", "put-in")}>
          {words.putIn}
        </a>
      </div>
      {isEmpty ? (
        <Empty title={words.empty} help={words.emptyHelp} />
      ) : (
        <Sieve filter={filter} choose={setFilter} typed={typed} type={setTyped} />
      )}
      <Loose view={view} />
      {!isEmpty && view.shelves.length > 0 && shelves.length === 0 && (
        <Empty title={words.none} help={words.noneHelp} />
      )}
      {shelves.map(({ shelf, bags }) => (
        <Section key={shelf} id={`shelf-${shelf}`} heading={words.shelf(shelf)}>
          <ul className="shelves-board">
            {bags.map((tile) => (
              <BagOnShelf key={tile.bag} tile={tile} band={bands[tile.bag]} isBack={tile.bag === at} />
            ))}
          </ul>
        </Section>
      ))}
      <ToCome view={view} />
    </>
  );
}

const Sieve = (p: {
  readonly filter: Filter;
  readonly choose: (filter: Filter) => void;
  readonly typed: string;
  readonly type: (text: string) => void;
}) => (
  <div className="shelves-sieve" role="search">
    <div className="shelves-filters" role="group" aria-label={words.show}>
      {(Object.keys(words.filters) as Filter[]).map((each) => (
        <button key={each} type="button" aria-pressed={each === p.filter} onClick={() => p.choose(each)}>
          {words.filters[each]}
        </button>
      ))}
    </div>
    <label>
      <span>{words.find}</span>
      <input value={p.typed} onChange={({ target }) => p.type(target.value)} autoComplete="off" />
    </label>
  </div>
);

const Loose = ({ view }: { readonly view: WardShelf }): ReactNode =>
  view.loose.length > 0 && (
    <Section id="loose" heading={words.loose} intro={words.looseHelp}>
      <ul className="shelves-list">
        {view.loose.map(({ id, title, due }) => (
          <li key={id}>
            <a href={linkTo("ward", "put-in", id)}>
              <strong>{id}</strong> {title}
            </a>
            {!due.isDue && <span className="quiet">{words.from(sayWhen(due.from))}</span>}
          </li>
        ))}
      </ul>
    </Section>
  );

const ToCome = ({ view }: { readonly view: WardShelf }): ReactNode =>
  view.toCome.length > 0 && (
    <Section id="to-come" heading={words.toCome(count(view.toComeCount))}>
      <ul className="shelves-list">
        {view.toCome.map(({ id, title, isToday }) => (
          <li key={id}>
            <a href={linkTo("ward", "put-in", id)}>
              <strong>{id}</strong> {title}
            </a>
            {isToday && <span className="quiet">{words.toComeToday}</span>}
          </li>
        ))}
      </ul>
    </Section>
  );
