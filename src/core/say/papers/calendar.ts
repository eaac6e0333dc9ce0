import { sayMinutes } from "../dates.ts";

const LOCALE = "en-GB";
const items = (n: number): string => `${n} ${n === 1 ? "item" : "items"}`;

/** What the entries of a calendar say. Nothing in them tells who works near mould, or why not. */
export const CALENDAR = {
  name: (campaign: string): string => campaign,
  nameOf: (campaign: string, person: string): string => `${campaign}: ${person}`,
  shift: (person: string): string => `Shift: ${person}`,
  shiftNote: "Clock times are a proposal. Follow the day sheet.",
  camera: (station: string, count: number): string => `Camera: ${items(count)} at ${station}`,
  cameraNote: (minutes: number, list: readonly string[]): string =>
    `${sayMinutes(minutes, LOCALE)}. ${list.join(", ")}`,
  round: (read: number, gel: number): string =>
    gel === 0
      ? `Ward: read the bags of ${items(read)}`
      : `Ward: read the bags of ${items(read)}, change the gel of ${gel}`,
  roundNote: (read: readonly string[], gel: readonly string[]): string =>
    `${gel.length > 0 ? `Gel out, wait, read, fresh gel in: ${gel.join(", ")}. ` : ""}Read: ${read.join(", ")}. In respirator, goggles, gloves and coverall, never alone. Release by readings, never by a date.`,
  lookBack: (days: number, count: number): string =>
    `Shelf: look again at ${items(count)}, ${days} days after boxing`,
  lookBackNote: (list: readonly string[]): string =>
    `${list.join(", ")}. New growth, dust or frass: close the box, tell the lead.`,
  order: (name: string): string => `Last day to order: ${name}`,
  orderNote: (packs: number, quantity: string, route: string): string =>
    `${packs} ${packs === 1 ? "pack" : "packs"}, ${quantity}, by ${route}.`,
} as const;
