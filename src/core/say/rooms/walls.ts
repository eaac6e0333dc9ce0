import type { Count } from "../page.ts";

/** Words around every room. */
export const ROOM_NAMES = {
  today: "Today",
  door: "Door",
  ward: "Ward",
  bench: "Bench",
  camera: "Camera",
  shelf: "Shelf",
  plan: "Plan",
  stores: "Stores",
  people: "People",
  climate: "Climate",
  questions: "Questions",
  settings: "Settings",
} as const;

const of = (count: Count, one: string, many: string): string => `${count.text} ${count.n === 1 ? one : many}`;

export const walls = {
  rooms: "Rooms",
  house: "The house",
  skip: "Skip to the room",
  product: "Leafward",
  opening: "Opening …",
  openingCampaign: "Fetching the campaign for the first time …",
  openingHelp: "After this it opens without the laptop too.",
  here: (room: string, campaign: string) => `${room} · ${campaign} · Leafward`,
  connected: "Connected",
  away: "Laptop out of reach",
  awayHelp: "Work on: everything is kept on this device and sent when the laptop is in reach again.",
  deciding: (items: Count) => `Deciding care: ${of(items, "item", "items")} to come`,
  allSent: "All sent",
  waiting: (entries: Count) => `${of(entries, "entry waits", "entries wait")} to be sent`,
  pictures: (pictures: Count) => `${of(pictures, "picture waits", "pictures wait")} to be sent`,
  refused: (entries: Count) => `${of(entries, "entry was", "entries were")} not taken`,
  refusedSee: "See why, in Settings",
  writer: "Working here",
  nobody: "Choose who works here",
  nobodyHelp: "Choose who works here, at the top, before anything is written down.",
  pretend: (day: string) => `Looking around an invented campaign. Its day is ${day}.`,
  undo: "Undo",
  takenBack: (said: string) => `Taken back: ${said}`,
  close: "Close this message",
  fault: "This screen could not be shown",
  faultHelp:
    "Nothing is lost. Reload it; if it stays so, go to another room and tell whoever keeps Leafward running.",
  reload: "Reload",
  newer: "A newer Leafward is here.",
  newerTake: "Take it now",
  caution: "Follow local rules and licensed practice. People come before items, items before dates.",
  back: "Back",
  item: (id: string) => `Item ${id}`,
  find: "Number of an item",
  findHelp: "Scan or type it",
  go: "Open",
  noSuchItem: (id: string) => `No item ${id} is listed.`,
} as const;

export const entrance = {
  title: "Come in",
  help: "Whoever leads the campaign reads a code to you from the laptop: eight letters, good for ten minutes and one device.",
  code: "Code",
  comeIn: "Come in",
  away: "The laptop is not in reach",
  awayHelp:
    "This device has never been in the campaign. Bring it nearer to the laptop and see that Leafward runs there.",
  again: "Try again",
} as const;
