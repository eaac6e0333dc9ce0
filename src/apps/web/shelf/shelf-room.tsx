import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";

export const ShelfRoom = () => <h1>{ROOM_NAMES.shelf}</h1>;
