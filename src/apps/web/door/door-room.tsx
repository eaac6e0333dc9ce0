import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";

export const DoorRoom = () => <h1>{ROOM_NAMES.door}</h1>;
