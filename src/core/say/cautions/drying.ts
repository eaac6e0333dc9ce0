import type { DryingCaution } from "../../physics/drying/drying-body.ts";
import type { RoomLoadCaution } from "../../physics/rooms/room-load.ts";

/** One plain sentence for each caution that travels with a drying time or the load of a drying room. */
export const CAUTIONS: Readonly<Record<DryingCaution | RoomLoadCaution, string>> = {
  "drying-time-is-a-range":
    "A drying time is a range: the same book may take a third of it or three times as long. Readings narrow it.",
  "permeability-is-assumed":
    "How easily damp moves through this item was assumed, not measured; no published figure for old books could be read.",
  "leather-diffusivity-assumed":
    "No figure for damp moving through old leather was found: hours to days, and the board beneath it decides.",
  "drying-side-holds-more":
    "An item on its way to dry holds more water than the curve says: the last part may go slower than shown.",
  "one-temperature":
    "The figure is for one temperature. A warmer room dries sooner, a colder one later; never warm an item to hurry it.",
  "release-by-reading-only":
    "This is when to look, not when it is dry: only two readings in a closed bag release an item, never a date or a weight.",
  "gel-never-touches":
    "Gel lies apart from the item, behind tissue or in a perforated box, and is weighed and changed before it is full.",
  "outside-air-wets-the-room":
    "The outside air holds more water than the room: keep windows shut and use a dehumidifier.",
  "thumb-rule-only":
    "Capacity by a maker's thumb rule, for 20 °C: in a colder room a machine takes out much less. Follow local rules and licensed practice for its wiring.",
  "drainage-and-power-needed":
    "A dehumidifier needs a drain or somebody who empties it, and power day and night: plan for the hours without.",
};
