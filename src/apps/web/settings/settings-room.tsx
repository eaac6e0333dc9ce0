import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";

export const SettingsRoom = () => <h1>{ROOM_NAMES.settings}</h1>;
