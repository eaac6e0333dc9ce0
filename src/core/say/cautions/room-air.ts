import type { RoomAirCaution } from "../../physics/rooms/room-air.ts";

/** One plain sentence for each caution that travels with a figure about the air of a room. */
export const CAUTIONS: Readonly<Record<RoomAirCaution, string>> = {
  "wipe-surfaces-after-waiting":
    "When the wait is over, wipe every level surface before other work: what has settled lifts again.",
  "nobody-stirs-while-waiting": "The wait counts from when the last person left and nothing dusty lay open.",
  "mixing-is-a-guess":
    "Corners and the far side of furniture clear more slowly than the room as a whole: when in doubt wait longer.",
  "stronger-near-the-liquid":
    "Over the cloth and the bottle the vapour is far stronger than the mean of the room, strong enough to burn: no flame, hot lamp or spark.",
  "mask-does-not-stop-vapour": "A dust mask does not stop alcohol vapour.",
  "above-the-limit":
    "More vapour than the chosen limit: use less, air more, or spread it over the day. Follow local rules and licensed practice.",
  "can-burn-leave-the-room":
    "Enough vapour to endanger life: leave, let nobody in, switch nothing, air from outside. Follow local rules and licensed practice.",
};
