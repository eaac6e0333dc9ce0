import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";

export const QuestionsRoom = () => <h1>{ROOM_NAMES.questions}</h1>;
