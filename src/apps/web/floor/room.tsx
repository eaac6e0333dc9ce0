import type { RoomCount } from "../../../core/plan/plan.ts";
import { floor } from "../../../core/say/page.ts";

export const Room = (p: { room: RoomCount; now: string; toCome: string }) => (
  <li className="room">
    <h3>{p.room.room}</h3>
    <p className="quiet">{floor.does[p.room.room]}</p>
    <p className="room-now">
      <strong>{p.now}</strong> {floor.now}
    </p>
    <p>{floor.toCome(p.toCome)}</p>
    <p className="quiet">{p.room.wait}</p>
  </li>
);
