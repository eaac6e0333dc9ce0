import { type KeyboardEvent, type PointerEvent, type RefObject, useRef, useState } from "react";
import { days as words } from "../../../../core/say/rooms/plan.ts";
import { isMirrored } from "../../frame/direction.ts";
import { AwayPattern } from "./away-pattern.tsx";
import { type Calendar, dayAt, type Row } from "./calendar.ts";
import { PointedChoice } from "./pointed-choice.tsx";
import {
  atFirst,
  dragged,
  type Ground,
  type Held,
  heldSpan,
  keyed,
  letGo,
  type Pointing,
  pressed,
  released,
} from "./pointing.ts";
import "./roster-picture.css";
import { RosterKey } from "./roster-key.tsx";
import { DAY, HEAD, heightOf, rowAt, topsOf, WEEK } from "./sizes.ts";
import { rowName, spotWords } from "./spot-words.ts";
import type { WeeksInSight } from "./use-weeks-in-sight.ts";
import { WeekStrip } from "./week-strip.tsx";

interface RosterPictureProps {
  readonly calendar: Calendar;
  readonly rows: readonly Row[];
  readonly box: RefObject<HTMLDivElement | null>;
  readonly sight: WeeksInSight;
  /** Place of today. */
  readonly today: number;
  /** Supposes something, in words; null: this device may not. */
  readonly suppose: ((words: string) => void) | null;
}

/** Everybody's days until the end as one long strip, in which days and marks are pointed at. */
export function RosterPicture({ calendar, rows, box, sight, today, suppose }: RosterPictureProps) {
  const tops = useTops(rows);
  const ground = groundOf(calendar, rows);
  const [now, setNow] = useState<Pointing>(() => atFirst(Math.max(0, today)));
  const [hasKeys, setHasKeys] = useState(false);
  const choice = useRef<HTMLDivElement>(null);
  const row = rows[now.row];
  const spotOf = (event: { clientX: number; clientY: number; currentTarget: HTMLElement }) => {
    const { left, right, top } = event.currentTarget.getBoundingClientRect();
    const along = isMirrored() ? right - event.clientX : event.clientX - left;
    const day = Math.min(ground.days - 1, Math.max(0, Math.floor(along / DAY)));
    return { row: rowAt(tops, event.clientY - top), day };
  };
  function press(event: PointerEvent<HTMLElement>): void {
    if (event.pointerType === "touch" || event.button !== 0 || suppose === null) return;
    const at = spotOf(event);
    if (at.row < 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    setHasKeys(false);
    setNow(pressed(now, ground, at.row, at.day, false));
  }
  function tap(event: React.MouseEvent<HTMLElement>): void {
    if (!isTouch(event.nativeEvent) || suppose === null) return;
    const at = spotOf(event);
    if (at.row >= 0) setNow(pressed(now, ground, at.row, at.day, true));
  }
  function key(event: KeyboardEvent): void {
    const next = keyed(now, ground, keyAsRead(event.key), event.shiftKey);
    if (next === null) return;
    event.preventDefault();
    setHasKeys(true);
    if ((event.key === "Enter" || event.key === " ") && now.held !== null)
      choice.current?.querySelector("button")?.focus();
    setNow(suppose === null ? letGo(next) : next);
    intoSight(box.current, next.day);
  }
  function done(said: string | null): void {
    if (said !== null) suppose?.(said);
    setNow(letGo(now));
    box.current?.focus();
  }
  return (
    <>
      <div className="roster-picture">
        <AwayPattern />
        <ul className="roster-names" aria-hidden="true" style={{ paddingBlockStart: HEAD }}>
          {rows.map((each) => (
            <li key={`${each.kind} ${rowName(each)}`} style={{ blockSize: heightOf(each) }}>
              {rowName(each)}
            </li>
          ))}
        </ul>
        <div
          className="roster-box"
          ref={box}
          tabIndex={0}
          role="application"
          aria-label={words.region}
          {...(suppose === null ? {} : { "aria-describedby": "roster-how" })}
          onKeyDown={key}
          onBlur={() => setHasKeys(false)}
        >
          <div
            className="roster-strip"
            style={{ inlineSize: calendar.weeks * WEEK, blockSize: tops.at(-1) ?? 0 }}
            onPointerDown={press}
            onPointerMove={(event) => now.isDragging && setNow(dragged(now, spotOf(event).day))}
            onPointerUp={() => setNow(released(now))}
            onPointerCancel={() => setNow(letGo(now))}
            onClick={tap}
          >
            {Array.from({ length: sight.last - sight.first + 1 }, (_, n) => sight.first + n).map((week) => (
              <WeekStrip key={week} calendar={calendar} week={week} rows={rows} tops={tops} today={today} />
            ))}
            {hasKeys && (
              <Frame kind="cursor" rows={rows} tops={tops} row={now.row} from={now.day} to={now.day} />
            )}
            {now.held && <HeldFrame held={now.held} rows={rows} tops={tops} />}
          </div>
        </div>
      </div>
      <p className="unseen" aria-live="polite">
        {hasKeys && row ? spotWords(row, dayAt(calendar, now.day), now.day) : ""}
      </p>
      <div ref={choice}>
        {now.held && !now.isDragging && (
          <PointedChoice held={now.held} rows={rows} calendar={calendar} done={done} />
        )}
      </div>
      <RosterKey />
    </>
  );
}

/** Tops are the same as long as the rows are, so that no week is drawn again for nothing. */
function useTops(rows: readonly Row[]): readonly number[] {
  const kept = useRef<{ readonly rows: readonly Row[]; readonly tops: readonly number[] }>(null);
  if (kept.current?.rows !== rows) kept.current = { rows, tops: topsOf(rows) };
  return kept.current.tops;
}

const groundOf = (calendar: Calendar, rows: readonly Row[]): Ground => ({
  rows: rows.length,
  days: calendar.weeks * 7,
  isOfDays: (row) => rows[row]?.kind !== "marks",
  markAt: (row, day) => {
    const its = rows[row];
    if (its?.kind !== "marks") return null;
    const at = its.marks.findIndex((mark) => mark.at === day);
    return at < 0 ? null : at;
  },
});

const isTouch = (event: Event): boolean =>
  event instanceof globalThis.PointerEvent && event.pointerType === "touch";

/** Where the page runs from right to left the arrows change places. */
const keyAsRead = (key: string): string =>
  !isMirrored() ? key : key === "ArrowLeft" ? "ArrowRight" : key === "ArrowRight" ? "ArrowLeft" : key;

function intoSight(box: HTMLElement | null, day: number): void {
  if (box === null) return;
  const [left, width] = [Math.abs(box.scrollLeft), box.clientWidth];
  const wanted =
    day * DAY < left ? day * DAY - DAY : day * DAY + DAY > left + width ? (day + 2) * DAY - width : left;
  box.scrollLeft = isMirrored() ? -wanted : wanted;
}

interface FrameProps {
  readonly kind: "cursor" | "held";
  readonly rows: readonly Row[];
  readonly tops: readonly number[];
  readonly row: number;
  readonly from: number;
  readonly to: number;
}

const HeldFrame = (p: {
  readonly held: Held;
  readonly rows: readonly Row[];
  readonly tops: readonly number[];
}) => <Frame kind="held" rows={p.rows} tops={p.tops} row={p.held.row} {...heldSpan(p.held)} />;

/** What is pointed at, over the drawing. */
const Frame = ({ kind, rows, tops, row, from, to }: FrameProps) => (
  <div
    className="roster-frame"
    data-kind={kind}
    style={{
      insetInlineStart: from * DAY,
      inlineSize: (to - from + 1) * DAY,
      insetBlockStart: tops[row] ?? 0,
      blockSize: rows[row] ? heightOf(rows[row]) : 0,
    }}
  />
);
