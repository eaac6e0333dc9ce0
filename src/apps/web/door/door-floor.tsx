import { useState } from "react";
import { door } from "../../../core/say/rooms/door.ts";
import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";
import { count } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import { ItemFinder } from "../item/item-finder.tsx";
import { goTo, linkTo } from "../walls/where.ts";
import "./door-floor.css";
import { DoorRows } from "./door-rows.tsx";
import type { DoorFilter } from "./list-view.ts";
import { ScreenHeading } from "./screen-heading.tsx";
import { useKeptView } from "./use-kept-view.ts";
import { useTags } from "./use-tags.ts";

const FILTERS = Object.keys(door.filters) as DoorFilter[]; // the words of every filter

/** The Door as somebody comes to it: a number to open or list, and who waits. */
export function DoorFloor() {
  const { tags } = useTags();
  return (
    <>
      <div>
        <ScreenHeading>{ROOM_NAMES.door}</ScreenHeading>
        <p className="quiet">{door.intro}</p>
      </div>
      <div className="door-floor-find">
        <ItemFinder found={(id) => goTo("door", "item", id)} unknown={(id) => goTo("door", "item", id)} />
        <a className="door-floor-tags" href={linkTo("door", "tags")}>
          {door.openTags(count(tags.length))}
        </a>
      </div>
      <DoorList />
    </>
  );
}

/** Who waits at the Door. */
function DoorList() {
  const [filter, setFilter] = useState<DoorFilter>("all");
  const [words, setWords] = useState("");
  const view = useKeptView("doorList", filter, words.trim());
  if (view === null) return null;
  const { counts, rows, toCome } = view;
  return (
    <Section id="door-list" heading={door.list}>
      <div className="door-floor-filter">
        <fieldset>
          <legend className="unseen">{door.filterLabel}</legend>
          {FILTERS.map((each) => (
            <label key={each} className="door-floor-choice">
              <input
                type="radio"
                name="door-filter"
                checked={filter === each}
                onChange={() => setFilter(each)}
              />
              {door.filters[each]} <span className="door-floor-count">{count(counts[each]).text}</span>
            </label>
          ))}
        </fieldset>
        <label className="door-floor-search">
          {door.search}
          <input type="search" value={words} onChange={({ target }) => setWords(target.value)} />
        </label>
      </div>
      <p role="status">
        {door.found(count(rows.length))} {toCome > 0 && door.toCome(count(toCome))}
      </p>
      {counts.all === 0 && <Empty title={door.noneHere} help={door.noneHereHelp} />}
      {counts.all > 0 && rows.length === 0 && <Empty title={door.noneFound} help={door.noneFoundHelp} />}
      <DoorRows rows={rows} />
    </Section>
  );
}
