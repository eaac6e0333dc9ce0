import type { Lamp, MouldWatch } from "../../physics/mould/mould-watch.ts";
import { duration, moment } from "../damp/quantities.ts";

/** Words of the room that shows the readers of the stores. */
export const climate = {
  intro:
    "What the readers of the stores say, and whether mould can grow there. A reader tells only of the place where it lies.",
  empty: "No reader has been read yet",
  emptyHelp: "Lay a reader at the coldest, dampest place of each store, and write down what it shows.",
  write: "Write a reading down",
  airing: "Open the windows?",
  back: "All readers",
  latest: (when: string) => `read ${when}`,
  unread: "no reading yet",
  old: "More than a day old: read it again.",
  states: {
    act: "Act:",
    watch: "Watch:",
    quiet: "", // the sentence beside it says that no lamp is lit, and that it is no all-clear
    unknown: "",
  } satisfies Record<MouldWatch["state"], string>,
  lamps: "Three lamps of the mould watch",
  lampOn: "lit now",
  lampWas: "was lit, not now",
  lampOff: "not lit",
  todo: "What to do",
  air: "The air",
  ahead: "Something readily mouldy that waits there",
  cautions: "To mind",
  days: { "2": "2 days", "7": "A week", "28": "4 weeks", "366": "A year" },
  span: "Show",
  picture: (name: string, days: string, low: string, high: string) =>
    `Air at ${name}, ${days}: relative humidity from ${low} to ${high}, and temperature. The days stand in the table.`,
  table: "Day by day, as a table",
  columns: { day: "Day", relHum: "Humidity, from and to", dryBulb: "Temperature, from and to" },
  relHum: "relative humidity",
  dryBulb: "temperature",
  sixtyFive: "65 %, from where moulds grow",
  none: "No reading in these days",
  noneHelp: "Show more days.",
  files: "Files of a logger",
  filesHelp:
    "They are read on the laptop: put the file into the folder climate of the campaign, and run “npx leafward keep” with that folder. Then they show here.",
  gone: (name: string) => `No reader is called ${name}`,
} as const;

/** A lamp, what lights it, and how it stands. */
export const LAMPS: Readonly<Record<"damp" | "critical" | "index", readonly [name: string, lights: string]>> =
  {
    damp: [
      "Damp",
      "65 % or more for two days on end: from there moulds of sized paper, leather and dirt grow.",
    ],
    critical: ["Critical", "Damper than the readiest surfaces need to grow mould at that warmth."],
    index: ["Growth", "The mould index has reached 1: growth has begun, and shows under a microscope."],
  };

export const sayLamp = ({ isLit, isLitNow, now, longest }: Lamp): string => {
  if (isLitNow) return `${climate.lampOn}${now ? `, for ${duration(now.hours)}` : ""}`;
  if (!isLit) return climate.lampOff;
  return `${climate.lampWas}${longest ? `; longest ${duration(longest.hours)} from ${moment(longest.from)}` : ""}`;
};

export const CLIMATE_TODO: Readonly<Record<MouldWatch["state"], readonly string[]>> = {
  act: [
    "Look at the objects today, the coldest corner first, in mask and gloves; open and touch as little as you can.",
    "Bring the air below 60 %: dehumidify, or open windows only when that dries.",
    "Bag what is damp or mouldy and take it to the Ward; keep people without protection out.",
    "Find where the damp comes from: a leak, a cold wall, the ground, wet things brought in.",
  ],
  watch: [
    "Look at the objects this week, the coldest corner first, in mask and gloves.",
    "Bring the air below 60 %: dehumidify, or open windows only when that dries.",
    "Lay a second reader at the coldest wall or shelf back.",
  ],
  quiet: ["Leave the reader where it is coldest and dampest, and look at the objects at every round."],
  unknown: [
    "See whether the reader runs, and read it every hour or less.",
    "Look at the objects meanwhile, the coldest corner first.",
  ],
};

/** Writing a reading down by hand. */
export const writeReading = {
  title: "Write a reading down",
  reader: "Reader",
  new: "Another reader",
  name: "Name of the reader: where it lies",
  noName: "Choose a reader, or name another.",
  relHum: "Relative humidity, %",
  dryBulb: "Temperature, °C",
  said: (reader: string, value: string) => `${reader}: ${value}`,
  help: "Outdoor readings under a name with “outdoor” in it help to tell when to open the windows.",
} as const;

/** When to air. */
export const airing = {
  title: "Open the windows?",
  intro:
    "Airing dries only while the air outside holds less water than the air inside. Its humidity in per cent does not tell that: cold air at 90 % may be drier than a warm room at 60 %.",
  store: "Which store",
  inside: (value: string, when: string) => `Inside: ${value}, ${when}`,
  insideOld: "This reading is more than six hours old: read the store again first.",
  outRelHum: "Relative humidity outside, %",
  outDryBulb: "Temperature outside, °C",
  ask: "Ask",
  water: (inside: string, outside: string) =>
    `Inside ${inside} g of water in a kilogram of air, outside ${outside} g.`,
  would: (value: string) => `With all air changed the room would come to ${value} at its present warmth.`,
} as const;
