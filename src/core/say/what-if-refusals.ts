import type { Campaign } from "../items/campaign.ts";
import type { Tightenable } from "../plan/what-if/change.ts";
import type { NotModelled, Refusal } from "../plan/what-if/read-scenario.ts";
import { addDays, daysBetween } from "../units/day.ts";
import { sayDay } from "./dates.ts";

const NOT_MODELLED: Readonly<Record<NotModelled, string>> = {
  "box sizes":
    'The plan counts boxes, not their sizes. Near it: "40 more boxes on <day>" shows what boxes by a day are worth.',
  money:
    "The plan knows no money. It says in days and items what a purchase or a person is worth; set your prices beside that.",
  weather:
    'The plan does not know the weather. Near it: "rains start on <day>" names what is not boxed by then, "room 33 C and 70 % until <day>" takes the heat into account.',
  sample:
    'The plan takes the survey as it is; how sure a share from a sample is, it does not say. Near it: "100 more like <format> from <day>" shows what a worse share would cost.',
  "mask breaks":
    "Mask times and breaks are laid into each day sheet; the campaign's dates do not move with them. They stand in campaign.json, and no scenario makes them longer or shorter.",
};

const LIMIT_NAMES: Readonly<Record<Tightenable, string>> = {
  exposedMinutesADay: "minutes near mould a day",
  exposedDaysAWeek: "days near mould a week",
  exposedDaysInARow: "days near mould in a row",
};
export const sayLimitName = (limit: Tightenable): string => LIMIT_NAMES[limit];

const KIND_WORDS = {
  person: "person",
  station: "station",
  store: "store",
  items: "kind of item",
  more: "role, station, store or kind of item",
} as const;
const ASK: Readonly<Record<keyof typeof KIND_WORDS, string>> = {
  person: "Say a code or a name of people.csv",
  station: "Say a station of campaign.json",
  store: "Say a store, its name, or its use",
  items: 'Say a format, an item\'s number, or "mouldy"',
  more: "Say more of what",
};

/**
 * Why a scenario cannot be supposed, and what to say instead. What is said of a person is not repeated where it could name a reason.
 * @param near what of the known names comes nearest, best first
 */
export function sayRefusal({ said, because }: Refusal, near: readonly string[], locale = "en-GB"): string {
  const day = (at: Parameters<typeof sayDay>[0]): string => sayDay(at, locale);
  const quoted = `"${said.length > 80 ? `${said.slice(0, 77)}…` : said}"`;
  switch (because.why) {
    case "not understood":
      return `${quoted} is not understood.`;
    case "no such day":
      return `${quoted}: there is no day "${because.got}". Write days as 2026-07-06 or 6 July 2026.`;
    case "day missing":
      return `${quoted} needs a day, such as "from 2026-07-06".`;
    case "unknown": {
      const known = near.length > 0 ? `Nearest: ${near.join(", ")}.` : `${ASK[because.kind]}.`;
      return `${quoted}: there is no ${KIND_WORDS[because.kind]} "${because.got}". ${known}`;
    }
    case "mould work":
      return `${quoted}: no scenario gives anybody mould work. Who may do it is settled with the person beforehand and written down as mould_work and clean work in people.csv and calendar.csv. You can ask for "one more cleaner from <day>".`;
    case "no reasons":
      return 'Reasons are not asked for and not kept. Say only "<person> on clean work from <day>" or "<person> away from <day> to <day>".';
    case "guards people":
      return `${quoted}: what guards people is not loosened to save days: mould minutes, exposed days, masks, breaks, company, wipe-downs and the Ward's readings stay as they are. A tighter limit can be supposed: "120 mould minutes a day".`;
    case "looser limit":
      return `${quoted}: the limit is ${because.now} ${LIMIT_NAMES[because.limit]}, and no scenario loosens it. A tighter one, below ${because.now}, can be supposed.`;
    case "stays closed":
      return `${quoted}: days on which the house is closed stay closed here, as some are closed for safety. If one is wrong, mend calendar.csv.`;
    case "not modelled":
      return `${quoted}: not answered yet. ${NOT_MODELLED[because.topic]}`;
    case "longer day":
      return `${quoted}: a scenario shortens days, it does not lengthen them; the longest here is ${because.most} hours.`;
    case "shorter opening":
      return `${quoted}: ${because.station} is there ${because.now.toLocaleString(locale)} hours a day already. To shorten it, say "${because.station} closed from … to …".`;
    case "no such air":
      return `${quoted}: a room of 0 to 60 °C and up to 100 % can be supposed, such as "room 33 C and 70 % until <day>".`;
    case "backwards":
      return `${quoted}: ${day(because.to)} is before ${day(because.from)}. Put the earlier day first.`;
    case "outside":
      return `${quoted}: nothing of that lies between today, ${day(because.from)}, and the end, ${day(because.to)}.`;
    case "end passed":
      return `${quoted}: the end must come after the plan's morning, ${day(because.today)}.`;
    case "same end":
      return `${quoted}: the campaign ends on ${day(because.end)} already.`;
    case "open already":
      return `${quoted}: ${because.station} has no days of its own, it is there whenever the house is open. Nothing would change.`;
    case "none listed":
      return because.kind === "camera"
        ? `${quoted}: the campaign lists no camera, so there is none to have a second of. Write one in campaign.json.`
        : `${quoted}: no ${because.kind} is listed, so it limits nothing now. Nothing would change.`;
    case "nothing like it":
      return `${quoted}: no item here is like that.`;
    case "all begun":
      return `${quoted}: there are none that have not been begun.`;
    case "how many":
      return `${quoted}: between 1 and ${because.most.toLocaleString(locale)} can be supposed.`;
  }
}

/** What can be asked, with the campaign's own names. */
export function sayExamples({ people, stores, items, stations, planFrom, end }: Campaign): string[] {
  const person = people.find((each) => each.mouldWork) ?? people[0];
  const store = stores.find((each) => each.use === "k-mask") ?? stores[0];
  const format = items[0]?.facts.format;
  const camera = stations.find((each) => each.kind === "camera");
  const length = daysBetween(planFrom, end);
  const [soon, later, late] = [0.1, 0.2, 0.8].map((share) => addDays(planFrom, Math.round(share * length)));
  const span = `from ${soon} to ${later}`;
  return [
    ...(person
      ? [
          `${person.code} on clean work from ${soon}`,
          `${person.code} away ${span}`,
          `only ${person.code} releases`,
        ]
      : []),
    `one more cleaner from ${soon}   (or: without mould work)`,
    ...(store ? [`${store.id} 21 days late`, `100 more ${store.id} on ${later}`] : []),
    ...(camera
      ? [
          `${camera.id} closed ${span}`,
          "second camera",
          `${camera.id} 12 hours a day`,
          `free ${camera.id} days Mon-Fri`,
        ]
      : []),
    ...(format ? [`400 more like ${String(format)} from ${soon}`] : []),
    `mouldy items from ${later}   (held back until then)`,
    "mouldy items last   (or: first)",
    `rains start on ${late}   (what must be dry and boxed by then)`,
    `room 33 C and 70 % until ${later}`,
    "freezer holds 60 items per 9-day cycle",
    `everyone 5 hours ${span}`,
    "Ward 800 litres",
    `end ${late}`,
    "120 mould minutes a day   (tighter, never looser)",
  ];
}
