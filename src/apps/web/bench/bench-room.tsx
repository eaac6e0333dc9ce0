import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";

export const BenchRoom = () => <h1>{ROOM_NAMES.bench}</h1>;
