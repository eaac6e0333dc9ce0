import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";

export const PeopleRoom = () => <h1>{ROOM_NAMES.people}</h1>;
