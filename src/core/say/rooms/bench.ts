import type { Act } from "../../items/campaign.ts";
import { sayAct } from "../conditions.ts";
import { ROOM_NAMES } from "./walls.ts";

/** Words of the Bench: cleaning and wrapping. */
export const bench = {
  intro: "Cleaning and wrapping, one item at a time.",
  minutes: (minutes: string) => `usually ${minutes} min`,
  exposed: "Near mould: these minutes go on your account",
  methods: "With, gentlest first",
  wear: "Wear",
  uses: "Have ready",
  stop: "Stop, and ask, when you meet",
  never: "Never",
  notYet: "Not yet",
  until: (action: string, until: string) => `${action}: ${until}`,
  before: "Before",
  after: "Afterwards",
  about: "About the item",
  found: "What it has",
  parts: "Parts",
  custodian: "The owner’s rule",
  ask: "Whom to ask",
  then: (acts: readonly string[]) => `Then: ${acts.map((act) => act.toLowerCase()).join(", ")}.`,
  last: "After this it is done.",
  elsewhere: (room: string, act: Act) => `Not here now. Next: ${sayAct(act).toLowerCase()}, at the ${room}.`,
  goThere: (room: string) => `Go to the ${room}`,
  inWard: "It stays in the Ward: what is mouldy, damp or under watch is released by readings first.",
  atDoor: `It waits at the ${ROOM_NAMES.door}: tests that must be answered are open.`,
  stopped: "Set aside. Nothing is done to it until an adviser has answered.",
  isDone: "It is boxed; nothing is left to do here.",
  unknown: (id: string) => `No item ${id} is listed`,
  unknownHelp: "Type its number again, or list it at the Door.",
  drawing: "Wrapper to its size",
  drawingOf: (name: string) => `${name}, drawn to the item’s measures, in mm`,
  drawingNone: "No drawing: its height, width and thickness are not all written down. Measure at the Door.",
  drawingKind: "Kind",
  drawingPrint: "On paper at true scale: leafward house, on the laptop.",
} as const;
