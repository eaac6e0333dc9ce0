import type { Limits } from "../../items/campaign.ts";
import type { Count } from "../page.ts";

const of = (count: Count, one: string, many: string): string => `${count.text} ${count.n === 1 ? one : many}`;

/** A limit: what it is, its unit, and what it means at the table. */
export const LIMIT_WORDS: Readonly<
  Record<keyof Limits, { readonly name: string; readonly unit: string; readonly means: string }>
> = {
  exposedMinutesADay: {
    name: "Near mould in a day",
    unit: "minutes",
    means: "Everything near mould counts, taking off and washing among it. Nobody is planned for more.",
  },
  exposedDaysAWeek: {
    name: "Days near mould in a week",
    unit: "days",
    means: "On the other days the same person does clean work.",
  },
  exposedDaysInARow: {
    name: "Days near mould in a row",
    unit: "days",
    means: "After so many a day without.",
  },
  maskMinutes: {
    name: "In the mask at a stretch",
    unit: "minutes",
    means: "Then it comes off, outside the zone.",
  },
  maskBreakMinutes: {
    name: "Break from the mask",
    unit: "minutes",
    means: "Before it is put on again. Of a break the longer is the stricter.",
  },
};

/** Words of the Settings. */
export const settings = {
  limits: "Limits near mould",
  limitsHelp:
    "Each with where it comes from. Where a local code, a doctor or an employer asks for less, write that: the stricter always holds. Two places that set them apart work by the stricter of each.",
  value: "Value",
  source: "Where it comes from",
  change: "Change",
  keep: "Keep",
  cancel: "Leave as it is",
  changed: (name: string, value: string) => `${name}: ${value} from now on`,
  looser: (name: string) =>
    `This is looser than before (${name}). Only a local code or licensed advice can be a reason; name it as the source.`,
  looserYes: "It is so: keep the looser limit",
  onlyLead: "Only the lead changes this.",
  noSource: "Name where the limit comes from: a code, a paragraph, an adviser's role.",
  notANumber: "Write a number that is not negative.",
  house: "The campaign",
  name: "Name",
  start: "First day",
  end: "Last day",
  wardLitres: "Room for bags in the Ward, litres",
  datesKept: "The campaign's name, days and Ward",
  backward: "The last day is before the first.",
  place: "Place",
  climate: {
    hot_humid: "hot and humid",
    warm_wet_season: "warm, with a wet season",
    hot_dry: "hot and dry",
    temperate: "temperate",
  } as Readonly<Record<string, string>>,
  placeSays: (name: string, climate: string, freezer: boolean, vacuum: boolean) =>
    `${name}, ${climate}. ${freezer ? "A freezer" : "No freezer"}; ${vacuum ? "a fine-filter vacuum" : "no fine-filter vacuum"}.`,
  stations: "Stations",
  station: (id: string, kind: string, places: Count, hours: string) =>
    `${id}: ${kind}, ${of(places, "place", "places")}, ${hours} h a day`,
  powerCut: "The freezer stood without power",
  powerCutHelp: "Whatever lies in it may have begun to thaw; insects live on when it was too short.",
  hours: "Hours",
  powerCutKept: (hours: string) => `Power cut of ${hours} h written down`,
  writeDown: "Write it down",
  device: "This device",
  deviceSays: (device: string, role: string) => `It is called ${device} and writes as ${role}.`,
  person: (name: string) => `It is ${name}'s own.`,
  shared: "Several people share it; whoever works is chosen at the top.",
  numbers: (number: string, day: string) =>
    `Numbers and days are written as your browser says: ${number}, ${day}.`,
  kept: (megabytes: string) => `It keeps ${megabytes} MB of the campaign.`,
  program: {
    yes: "The program itself is on this device: it opens without the laptop.",
    no: "The program is not kept on this device, most likely because it does not trust the laptop's certificate: what is open works on, but do not close or reload it away from the laptop.",
  },
  install: "To put it on the home screen: the browser's menu, “Install” or “Add to home screen”.",
  waiting: (entries: Count) =>
    `${of(entries, "entry waits", "entries wait")} to be sent. They are safe here; bring the device near the laptop.`,
  nothingWaits: "All of it is sent.",
  refused: "Entries that were not taken",
  refusedHelp:
    "They are kept here. Try again once the reason is gone; give one up only when it is written down elsewhere.",
  refusedWhat: (kind: string) => kind.replace(/([A-Z])/g, " $1").toLowerCase(),
  tryAgain: "Try again",
  giveUp: "Give it up",
  givenUp: "Given up; it stays on this device only",
  elsewhere: (entries: Count, names: string) =>
    `${of(entries, "entry was", "entries were")} written when this device was called ${names}, and ${entries.n === 1 ? "was" : "were"} not sent. Ask the lead for a code of that name to send ${entries.n === 1 ? "it" : "them"}.`,
  leave: "Leave the campaign on this device",
  leaveHelp: "It is shown out; a new code lets it in again. What is sent stays in the log.",
  leaveWaits:
    "Entries wait here. Send them first: once the device has left, they are sent only if it comes in again under the same name.",
  leaveYes: "Leave",
  cautions: "Cautions",
  cautionLines: [
    "Leafward advises; it licenses nobody. Follow local rules and licensed practice.",
    "Masks, gloves and ventilation are chosen by whoever is responsible for safety where you work.",
    "Whoever feels unwell stops and goes out at once, and owes nobody a reason.",
    "Possible poison, droppings, nitrate film or weapons: stop, close, mark, and ask. Nothing else.",
  ],
} as const;
