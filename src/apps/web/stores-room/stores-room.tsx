import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";

export const StoresRoom = () => <h1>{ROOM_NAMES.stores}</h1>;
