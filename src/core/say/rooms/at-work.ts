import type { Act } from "../../items/campaign.ts";
import type { NearStop } from "../../log/mould-account.ts";
import type { Count } from "../page.ts";

const of = (count: Count, one: string, many: string): string => `${count.text} ${count.n === 1 ? one : many}`;

const DOING: Readonly<Record<Act, string>> = {
  survey: "Surveying",
  admit: "Bagging",
  release: "Reading",
  covers: "Photographing the covers of",
  wrap: "Wrapping",
  clean: "Cleaning",
  image: "Photographing",
  box: "Boxing",
};

/** Words of work that is begun and ended at a station: the clock, the account of minutes near mould, the wipe-down. */
export const atWork = {
  now: "Running now",
  doing: (act: Act, item: string) => `${DOING[act]} ${item}`.trim(),
  since: (clock: string) => `since ${clock}`,
  sinceDay: (day: string, clock: string) => `since ${day}, ${clock}; its end was not written`,
  soFar: (minutes: string) => `${minutes} so far`,
  satBefore: (minutes: string) => `${minutes} before, today`,
  open: "Open it",
  start: (act: string) => `Start: ${act.charAt(0).toLowerCase()}${act.slice(1)}`,
  started: (act: Act, item: string) => `Begun: ${DOING[act].toLowerCase()} ${item}`,
  end: "End this work",
  minutes: "Minutes of work",
  maskMinutes: "Of these in the mask",
  minutesHelp: "As the clock has it; put it right if you stopped sooner.",
  more: "5 minutes more",
  less: "5 minutes less",
  wrapper: "Wrapper",
  done: "Done",
  pause: "Break: goes on later",
  never: "Begun by mistake",
  ended: (act: Act, item: string) => `Done: ${DOING[act].toLowerCase()} ${item}`,
  paused: (act: Act, item: string) => `Paused: ${DOING[act].toLowerCase()} ${item}`,
  notBegun: "The beginning was a mistake; no minutes were written",
  badMinutes: "Minutes are a number from 0 to 1440.",
  isRunning: (item: string) => `First end the work that runs now${item === "" ? "" : `, on ${item}`}.`,

  account: "Minutes near mould",
  cleanWork: "Clean work this week",
  cleanWorkHelp: "Nothing near mould is begun under this name this week.",
  leftToday: (left: string) => `${left} left today`,
  today: (minutes: string, limit: string) => `${minutes} of ${limit}`,
  week: (days: string, limit: string, minutes: string) => `${days} of ${limit} days this week, ${minutes}`,
  row: (days: Count) => (days.n === 0 ? "No day in a row" : `${of(days, "day", "days")} in a row`),
  rowLimit: (limit: string) => `then one off after ${limit}`,
  mask: (left: string) => `${left} until the mask comes off`,
  maskWorn: (worn: string, limit: string) => `worn ${worn} of ${limit}`,
  noMaskLimit: "No break from what is worn is asked for",
  breakUntil: (clock: string) => `Mask off, outside the zone, until ${clock}`,
  breakDue: (minutes: string) => `${minutes} outside the zone, mask off`,
  words: { today: "Today", week: "This week", row: "In a row", mask: "Mask" },
  sources: (sources: string) => `Limits: ${sources}. Follow local rules and licensed practice.`,
  warning: (minutes: string, what: "mask" | "day") =>
    what === "mask"
      ? `${minutes} until the mask comes off: come to a point where you can stop.`
      : `${minutes} near mould left today: come to a point where you can stop.`,
  stopNow: (why: string) => `Stop here. ${why}`,
  stops: {
    "clean work": "Clean work this week.",
    week: "Clean work this week.",
    row: "Clean work today: a day off from mould is due.",
    day: "The minutes near mould for today are used.",
    mask: "The mask comes off now, outside the zone: drink water, rest.",
  } satisfies Record<NearStop, string>,
  maskOff: "My mask comes off now",
  maskOffSaid: "Mask off",
  longer: (usual: string, left: string) =>
    `This usually takes ${usual}; ${left} are left. Begin only what can rest half done.`,
  alone: "Never alone near mould: somebody is within call until you are out and washed.",

  station: "Where",
  at: (station: string) => `At: ${station}`,
  gate: (station: string) => `Wipe ${station} down first`,
  gateWhy: (item: string, dirt: string) =>
    dirt === ""
      ? `${item} lay here, and nobody can say what it left. No wipe-down is written since.`
      : `${item} lay here and leaves ${dirt}. No wipe-down is written since.`,
  gateHow: ["Sheet off, folded inward, into the bag", "Wipe", "Dry", "Fresh gloves"],
  gateMinutes: "Minutes it took",
  wiped: (station: string) => `${station} is wiped down`,
  wipedSaid: (station: string) => `Wiped down: ${station}`,
  wipeAnyway: "Wipe it down",

  day: "Today, in order",
  dayHelp: "From clean to dirty; breaks and wipe-downs stand where they are due.",
  nothingPlanned: "The plan has nothing for you here today",
  nothingPlannedHelp: "What is ready stands below; ask the lead what to take.",
  nobody: "Choose at the top who works here",
  nobodyHelp: "Then your day stands here in order, with your minutes near mould.",
  noPlan: "There is no plan yet",
  noPlanHelp: "What is ready stands below, from clean to dirty.",
  items: (items: Count) => `${of(items, "item", "items")}`,
  doneMark: "done",
  nextMark: "next",
  goesOn: "goes on after the break",
  ready: "Ready here",
  readyHelp: (shown: string, all: Count) =>
    all.n > Number(shown)
      ? `${of(all, "item is", "items are")} ready; the first ${shown}, from clean to dirty, what must be done first.`
      : `${of(all, "item is", "items are")} ready, from clean to dirty, what must be done first.`,
  noneReady: "Nothing is ready here",
  noneReadyHelp: "Items come when the Ward has released them, and covers are pictured where they must be.",
  dirt: (dirt: string) => `leaves ${dirt}`,
  must: "must",
  back: "Back to the list",

  pictures: "Pictures",
  pictureBefore: "Picture before",
  pictureAfter: "Picture after",
  pictureSaid: (item: string) => `Picture kept with ${item}`,
  noPictures: "No picture yet.",
} as const;
