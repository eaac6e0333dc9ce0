import { sayClockRange } from "../../../core/say/day-sheet.ts";
import { atWork as words } from "../../../core/say/rooms/at-work.ts";
import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";
import { count, LOCALE } from "../frame/reader.ts";
import { linkTo } from "../walls/where.ts";
import type { DayLine } from "./day-lines.ts";
import "./day-list.css";

/** A day in order: work with its items, breaks and wipe-downs between, and what is done. */
export function DayList({ lines }: { readonly lines: readonly DayLine[] }) {
  const next = lines.find(({ items }) => items.some(({ isDone }) => !isDone));
  return (
    <ol className="day-list">
      {lines.map((line) => (
        <li
          key={`${line.from} ${line.text} ${line.items[0]?.id ?? ""}`}
          data-work={line.isWork}
          {...(line === next ? { "aria-current": "step" as const } : {})}
        >
          <span className="day-list-clock">{sayClockRange(line, LOCALE)}</span>
          {line.isWork ? <WorkLine line={line} isNext={line === next} /> : <p>{line.text}</p>}
        </li>
      ))}
    </ol>
  );
}

function WorkLine({ line, isNext }: { readonly line: DayLine; readonly isNext: boolean }) {
  const { room, items } = line;
  const around = [
    room === null ? "" : ROOM_NAMES[room],
    line.station,
    line.dirt === "" ? "" : words.dirt(line.dirt),
    line.goesOn ? words.goesOn : "",
  ].filter((each) => each !== "");
  return (
    <div>
      <p>
        <strong>{line.text}</strong>
        {items.length > 1 && ` · ${words.items(count(items.length))}`}
        {isNext && <span className="day-list-mark">{words.nextMark}</span>}
      </p>
      <p className="quiet">{around.join(" · ")}</p>
      <ul className="day-list-items">
        {items.map((item) => (
          <li key={item.id}>
            <a href={linkTo(room ?? "bench", "item", item.id)} data-done={item.isDone}>
              {item.id}
              {items.length === 1 && <span className="quiet">{item.title}</span>}
              {item.isDone && <span className="day-list-done">✓ {words.doneMark}</span>}
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
}
