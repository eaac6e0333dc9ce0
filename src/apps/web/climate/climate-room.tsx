import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";

export const ClimateRoom = () => <h1>{ROOM_NAMES.climate}</h1>;
