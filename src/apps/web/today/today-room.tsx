import { sayDay } from "../../../core/say/dates.ts";
import { sayClock } from "../../../core/say/day-sheet.ts";
import { today as words } from "../../../core/say/rooms/today.ts";
import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";
import { count, LOCALE } from "../frame/reader.ts";
import { Empty } from "../frame/section.tsx";
import { useStatus, useView } from "../link/use-view.ts";
import { linkTo } from "../walls/where.ts";
import "./today.css";
import type { RoomToday } from "./views.ts";

/** What now, who, until when: the floor as the day begins. */
export function TodayRoom() {
  const view = useView("today");
  const status = useStatus();
  if (view === null || status === null) return null;
  return (
    <>
      <div>
        <h1>{sayDay(status.today, LOCALE, "full")}</h1>
        <p className="quiet">{words.intro}</p>
      </div>
      {!view.hasPlan && <Empty title={words.noPlan} help={words.noPlanHelp} />}
      <ol className="today-floor">
        {view.rooms.map((room) => (
          <TodayRoomCard key={room.room} room={room} />
        ))}
      </ol>
      {view.disagreements > 0 && (
        <p>
          <a href={linkTo("door")}>{words.disagreements(count(view.disagreements))}</a>
        </p>
      )}
      {view.questions > 0 && (
        <p>
          <a href={linkTo("questions")}>{words.questions(count(view.questions))}</a>
        </p>
      )}
    </>
  );
}

const TodayRoomCard = ({ room }: { readonly room: RoomToday }) => (
  <li className="today-room">
    <h2>
      <a href={linkTo(room.room)}>{ROOM_NAMES[room.room]}</a>
    </h2>
    <p className="quiet">{words.does[room.room]}</p>
    <p className="today-figure">
      <strong>{room.toDo > 0 ? count(room.toDo - room.done).text : "–"}</strong>
      <span>
        {room.toDo > 0 ? words.toDo(count(room.toDo - room.done)).replace(/^\S+ /, "") : words.nothingToDo}
      </span>
    </p>
    {room.done > 0 && <p>{words.done(count(room.done))}</p>}
    <p>{room.here > 0 ? words.here(count(room.here)) : words.none}</p>
    {room.people.length > 0 && <p>{new Intl.ListFormat(LOCALE).format(room.people)}</p>}
    {room.until !== null && <p className="quiet">{words.until(sayClock(room.until, LOCALE))}</p>}
  </li>
);
