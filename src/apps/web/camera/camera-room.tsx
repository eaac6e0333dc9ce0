import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";

export const CameraRoom = () => <h1>{ROOM_NAMES.camera}</h1>;
