import { ROOM_NAMES, walls } from "../../../core/say/rooms/walls.ts";
import "./rooms-nav.css";
import { linkTo, type RoomName } from "./where.ts";

/** The rooms an item walks through, in their order. */
const FLOOR: readonly RoomName[] = ["door", "ward", "bench", "camera", "shelf"];
const OFFICE: readonly RoomName[] = ["plan", "stores", "people", "climate", "questions", "settings"];

/** Every room, always in reach: the floor as a floor plan with doorways, the office beside it. */
export const RoomsNav = ({ room }: { readonly room: RoomName }) => (
  <nav className="rooms-nav" aria-label={walls.rooms}>
    <RoomLink to="today" room={room} />
    <ol className="rooms-floor">
      {FLOOR.map((each) => (
        <li key={each}>
          <RoomLink to={each} room={room} />
        </li>
      ))}
    </ol>
    <ul className="rooms-office">
      {OFFICE.map((each) => (
        <li key={each}>
          <RoomLink to={each} room={room} />
        </li>
      ))}
    </ul>
  </nav>
);

const RoomLink = (p: { readonly to: RoomName; readonly room: RoomName }) => (
  <a href={linkTo(p.to)} aria-current={p.to === p.room ? "page" : undefined}>
    {ROOM_NAMES[p.to]}
  </a>
);
