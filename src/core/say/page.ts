import type { Act } from "../items/campaign.ts";
import type { Left, RoomCount } from "../plan/plan.ts";

/**
 * Every sentence of the campaign's page, in English. Dates and numbers come in already written for the reader,
 * beside the bare count where the grammar needs it; other languages replace this file and keep its names.
 */

/** A count with its written form, for the plural. */
export interface Count {
  readonly n: number;
  readonly text: string;
}
const of = (count: Count, one: string, many: string): string => `${count.text} ${count.n === 1 ? one : many}`;

export const LANGUAGE = { code: "en", direction: "ltr" } as const;

export const frame = {
  product: "Leafward",
  title: (campaign: string) => `${campaign} · Leafward`,
  skip: "Skip to the finish date",
  contents: "On this page",
  madeFor: (day: string) => `Plan made for the morning of ${day}`,
  runs: (range: string) => `Campaign ${range}`,
  items: (total: Count, done: Count) => `${of(total, "item", "items")}, ${done.text} boxed before this plan`,
  loading: "Opening the plan …",
  failed: "The plan could not be opened",
  failedHelp:
    "Leafward may have been closed. Start it again in its window, then try once more; nothing is lost.",
  retry: "Try again",
  caution: "Follow local rules and licensed practice. People come before items, items before dates.",
};

export const answer = {
  heading: "When it will be finished",
  nav: "Finish",
  headline: (day: string) => `As likely as not, finished by ${day}.`,
  headlineLate: (end: string) => `More likely than not, unfinished on ${end}.`,
  empty: "No finish date yet",
  emptyHelp:
    "Not one item can be given a day. What keeps them is listed under “Items without a place” below.",
  likely: { p10: "1 in 10", p50: "Half", p90: "9 in 10" },
  likelyHelp: {
    p10: "if nearly all goes well",
    p50: "as likely as not",
    p90: "if much goes wrong",
  },
  laterThan: (end: string) => `After ${end}`,
  finishedBy: (share: string, day: string) => `${share} of the simulated campaigns finish by ${day}`,
  boxed: (low: string, middle: string, high: string, total: Count) =>
    low === high
      ? `Boxed by the end: ${middle} of ${of(total, "item", "items")}.`
      : `Boxed by the end: ${middle} of ${of(total, "item", "items")}, give or take (${low} to ${high}).`,
  proof: (itemGap: string, draws: string) =>
    `Proved to be within ${itemGap} of the best plan there can be. Range from ${draws} simulated campaigns.`,
  without: (count: Count) => `${of(count, "item has", "items have")} no place in this plan`,
  start: "Start",
  morning: "This plan",
  end: "End",
  picture: (start: string, range: string, end: string) =>
    `The campaign as a line from ${start} to ${end}; the likely finish lies ${range}.`,
  between: (from: string, to: string) => `between ${from} and ${to}`,
};

export const floor = {
  heading: "The five rooms",
  nav: "Rooms",
  intro: "Every item walks from the Door to the Shelf. How many stand in each room, and what they wait for.",
  does: {
    Door: "arrival and survey",
    Ward: "quarantine and drying",
    Bench: "cleaning and wrapping",
    Camera: "imaging",
    Shelf: "boxing and store",
  } satisfies Record<RoomCount["room"], string>,
  now: "here now",
  toCome: (count: string) => `${count} to come`,
  nobody: "Nobody works here on the first day.",
  working: (names: string) => `First day: ${names}`,
  empty: "The plan counts no rooms yet",
  emptyHelp: "Rooms fill once the survey sheet has items.",
};

export const binds = {
  heading: "What holds the date",
  nav: "What holds it",
  intro: "The first line is where one more hour, place or pack would save the most.",
  load: "used until the finish",
  loadValue: (percent: string) => `${percent} used`,
  empty: "Nothing holds the date back",
  emptyHelp: "There is room to spare in people, stations and stores.",
};

export const people = {
  heading: "The coming two weeks",
  nav: "People",
  intro:
    "Mould minutes for each person and day: all minutes near mould, with taking off, washing tools and waste.",
  ceiling: (minutes: string, days: Count) => `at most ${minutes} a day, ${of(days, "day", "days")} a week`,
  cleanWork: "clean work this week",
  away: "away",
  closed: "nobody in",
  over: "over the limit",
  picture: "Picture",
  table: "Table",
  view: "Show as",
  person: "Person",
  cell: (minutes: string, limit: string) => `${minutes} of ${limit}`,
  pictureOf: (name: string, range: string) => `${name}, ${range}`,
  inWords: (day: string, what: string) => `${day}: ${what}.`,
  key: "Key",
  keyBar: "mould minutes, bar full at the day’s limit",
  keyAway: "away",
  keyClosed: "nobody in",
  keyClean: "clean work this week",
  empty: "Nobody is in the plan for these two weeks",
  emptyHelp: "Check the people list and the calendar for days present.",
};

export const left = {
  heading: "Items without a place",
  nav: "No place",
  intro: "Left out on purpose, each with its reason. Nothing here is lost: it rests safely where it is.",
  kinds: {
    "no time": "No time before the end",
    "set aside": "Set aside until someone has answered",
    "at the Door": "At the Door: tests still to be made",
  } satisfies Record<Left["kind"], string>,
  kindsHelp: {
    "no time": "More days, hands or stores would bring these in.",
    "set aside": "A rule stops the work; the person named can end the wait.",
    "at the Door": "“Not tested” never counts as “no”.",
  } satisfies Record<Left["kind"], string>,
  kindsNone: {
    "no time": "Everything with a route has its days.",
    "set aside": "No rule holds an item back.",
    "at the Door": "Every item has been tested.",
  } satisfies Record<Left["kind"], string>,
  search: "Find an item",
  searchHelp: "Number, title, reason or rule",
  clear: "Clear the search",
  found: (found: Count, total: string) => `${of(found, "item", "items")} of ${total}`,
  noMatch: "No item matches.",
  must: "must be done",
  ask: (who: string) => `Ask ${who}`,
  rule: (id: string) => `Rule ${id}`,
  source: (source: string, status: string) =>
    source.startsWith(status) ? `Source: ${source}` : `Source: ${source} (${status})`,
  unsure: "acted on as the safer side of “unsure”",
  safety: "people’s safety",
  more: (count: string) => `Show ${count} more`,
  shown: (shown: string, total: string) => `${shown} of ${total} shown`,
  empty: "Every item has its place",
  emptyHelp: "All of them reach the camera and their box before the end.",
};

export const orders = {
  heading: "Orders to send",
  nav: "Orders",
  intro: "The last day each can be sent and still be here in time.",
  orderBy: "Order by",
  what: "What",
  howMuch: "How much",
  why: "Why",
  today: "today",
  late: "late already",
  lateHelp: (day: string) => `Needed on ${day}; even ordered today it comes too late.`,
  needed: (day: string) => `Needed on ${day}.`,
  packs: (packs: Count, quantity: string, unit: string) =>
    `${of(packs, "pack", "packs")} · ${quantity} ${unit}`,
  by: (route: string) => `by ${route}`,
  empty: "Nothing to order",
  emptyHelp: "What is in the store room and on its way is enough to the end.",
};

export const sheets = {
  heading: "First day’s sheets",
  nav: "Day sheets",
  intro:
    "Each person’s first day in this plan, in order: clean work first, dirty work last. Clock times are a proposal; the order and the limits hold.",
  day: (day: string) => `For ${day}`,
  nothing: "No work in this plan.",
  acts: {
    survey: "Survey",
    admit: "Admit to the Ward",
    release: "Try release",
    covers: "Picture covers",
    wrap: "Wrap",
    clean: "Clean",
    image: "Image",
    box: "Box",
  } satisfies Record<Act, string>,
  mould: "mould work",
  total: (minutes: string) => `${minutes} in all`,
  exposed: (minutes: string) => `${minutes} near mould`,
  at: (station: string) => `at ${station}`,
  empty: "No sheets for the first day",
  emptyHelp: "Nobody has work in this plan yet.",
};

export const picture = {
  heading: "The plan in one picture",
  nav: "Picture",
  intro:
    "People near mould, the Ward, the camera and the stores over the days until the end; the same sheet is printed with the papers.",
  alternative: (campaign: string) =>
    `The plan of ${campaign} drawn over its days; its figures stand in the parts of this page around it.`,
  large: "Show it large",
};

export const papers = {
  heading: "Papers to print",
  nav: "Papers",
  intro: "They work in a power cut. Print them before the day begins.",
  kind: "PDF",
  empty: "No papers written yet",
  emptyHelp: "They appear here once the plan’s papers have been made.",
  failed: "The list of papers could not be read. Start Leafward again, then reload this page.",
};
