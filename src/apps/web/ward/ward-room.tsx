import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";

export const WardRoom = () => <h1>{ROOM_NAMES.ward}</h1>;
