import { useEffect, useRef } from "react";
import { sayDay, sayPercent } from "../../../core/say/dates.ts";
import { WARD_TASKS, ward as words } from "../../../core/say/rooms/ward.ts";
import { addDays, type Day } from "../../../core/units/day.ts";
import { count, LOCALE } from "../frame/reader.ts";
import { useStatus } from "../link/use-view.ts";
import { linkTo } from "../walls/where.ts";
import "./bag-on-shelf.css";
import type { BagTile, ReadyBand } from "./shelf-view.ts";
import { sayWhen } from "./when.ts";

/** One bag as it stands on its shelf: number, what it holds, what it read, what it waits for. */
export function BagOnShelf(p: {
  readonly tile: BagTile;
  readonly band: ReadyBand | undefined;
  /** Somebody comes back from it: it takes the focus. */
  readonly isBack: boolean;
}) {
  const { bag, items, latest, due, isOpen, isInFreezer } = p.tile;
  const today = useStatus()?.today;
  const link = useRef<HTMLAnchorElement>(null);
  useEffect(() => {
    if (p.isBack && document.activeElement?.tagName !== "INPUT") link.current?.focus();
  }, [p.isBack]);
  const marks = [...(isOpen ? [words.open] : []), ...(isInFreezer ? [words.freezer] : [])];
  return (
    <li className="bag-on-shelf" data-due={due.isDue} data-open={isOpen}>
      <a ref={link} className="bag-on-shelf-bag" href={linkTo("ward", "bag", bag)}>
        <strong className="bag-on-shelf-number">{bag}</strong>
        <span className="quiet">
          {items.length === 1 && items[0] === bag ? "" : words.items(count(items.length))}{" "}
          {items.length > 0 && items[0] !== bag && items.slice(0, 3).join(", ")}
        </span>
        <span className="bag-on-shelf-reading">
          {latest === null ? (
            <span className="quiet">{words.unread}</span>
          ) : (
            <>
              <b>{sayPercent(latest.relHum, LOCALE)}</b>{" "}
              <span className="quiet">
                {sayDay(latest.day, LOCALE, "tiny")}
                {latest.isBesideGel && `, ${words.gel}`}
              </span>
            </>
          )}
        </span>
        <span className="bag-on-shelf-task">
          <strong>{WARD_TASKS[due.task][0]}</strong>
          {!due.isDue && <span> {words.from(sayWhen(due.from, today))}</span>}
        </span>
        {p.band && today && p.band.from !== "earned" && (
          <span className="quiet">{readyWords(p.band, today)}</span>
        )}
        {marks.length > 0 && <span className="bag-on-shelf-mark">{marks.join(", ")}</span>}
      </a>
      {!isOpen && !isInFreezer && (
        <a
          className="bag-on-shelf-read"
          href={linkTo("ward", "read", bag)}
          aria-label={`${words.read}, ${words.bag(bag)}`}
        >
          {words.read}
        </a>
      )}
    </li>
  );
}

function readyWords({ low, high, from }: ReadyBand, today: Day): string {
  if (from === "readings, for planning only") return words.noDate;
  const day = (days: number): string => sayDay(addDays(today, Math.ceil(days)), LOCALE, "tiny");
  return (from === "readings" ? words.ready : words.usually)(day(low), day(high));
}
