import type { Campaign } from "../../items/campaign.ts";
import { addDays, type Day } from "../../units/day.ts";
import { ADDABLE_ROLES, type AddableRole, type Change, type Tightenable } from "./change.ts";
import { changed } from "./changes.ts";
import type { Freezer } from "./freezer-queue.ts";
import { type ItemsMeant, Names, stationKindIn, type Unknown } from "./names.ts";
import { type Dated, dated, numberIn, spanOf, weekdaysIn } from "./spoken.ts";
import { type Obstacle, whyNot } from "./why-not.ts";

/** Questions the plan has no figures for yet. */
export const NOT_MODELLED = ["box sizes", "money", "weather", "sample", "mask breaks"] as const;
export type NotModelled = (typeof NOT_MODELLED)[number];

/** What was said and cannot be supposed. */
export interface Refusal {
  readonly said: string;
  readonly because:
    | { readonly why: "not understood" }
    | { readonly why: "no such day"; readonly got: string }
    | { readonly why: "day missing" }
    | Unknown
    | { readonly why: "mould work" }
    | { readonly why: "guards people" }
    | { readonly why: "stays closed" }
    | { readonly why: "no reasons" }
    | { readonly why: "not modelled"; readonly topic: NotModelled }
    | Obstacle;
}

export interface Scenario {
  readonly said: string;
  readonly changes: readonly Change[];
  /** Code of the one person who releases, where that was asked: answered from the plan, not by a new one. */
  readonly releasesAlone: string | null;
  /** A freezer of batches, where that was asked: answered from the plan too. */
  readonly freezer: Freezer | null;
}

type Read = Change | { readonly releases: string } | { readonly freezer: Freezer } | Refusal["because"];

/** One scenario from plain words: changes joined by ";". Everything that stands in the way is named, not the first alone. */
export function readScenario(
  said: string,
  campaign: Campaign,
  itemsMeant: ItemsMeant,
): { readonly scenario: Scenario; readonly refusals: readonly Refusal[] } {
  const changes: Change[] = [];
  const refusals: Refusal[] = [];
  let releasesAlone: string | null = null;
  let freezer: Freezer | null = null;
  let now = campaign;
  for (const part of said.split(";").map((each) => each.trim())) {
    if (part === "") continue;
    const read = new Reader(part, now, itemsMeant).read();
    if ("releases" in read) releasesAlone = read.releases;
    else if ("freezer" in read) freezer = read.freezer;
    else if ("why" in read) refusals.push({ said: part, because: read });
    else {
      const obstacle = whyNot(now, read);
      if (obstacle) refusals.push({ said: part, because: obstacle });
      else {
        changes.push(read);
        now = changed(now, read);
      }
    }
  }
  if (changes.length === 0 && releasesAlone === null && freezer === null && refusals.length === 0)
    refusals.push({ said, because: { why: "not understood" } });
  return { scenario: { said: said.trim(), changes, releasesAlone, freezer }, refusals };
}

const NUMBER = String.raw`(\d[\d,.]*|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|a|an|another)`;
const ORDINALS = ["second", "third", "fourth", "fifth"];
const LIMITS: readonly (readonly [RegExp, Tightenable])[] = [
  [/\b(mould|exposed) minutes\b|\bminutes (a day )?(near|in|of) mould\b/, "exposedMinutesADay"],
  [/\b(mould|exposed) days in a row\b|\bdays in a row\b/, "exposedDaysInARow"],
  [/\b(mould|exposed) days\b/, "exposedDaysAWeek"],
];
/** Asking for any of these to go is refused, however it is worded. */
const GUARDS =
  /\b(without|no|fewer|shorter|less|skip|drop|ignore|longer)\b.*\b(breaks?|masks?|respirators?|protection|gloves|rest days?|limits?|wipe-?downs?|quarantine|readings?)\b|\b(works?|working) alone\b|\blone work\b|\blonger (in|behind) (the )?masks?\b/;
/** Why a person is on clean work or away is nobody's business here. */
const REASONS =
  /\b(pregnan\w*|asthma\w*|allerg\w*|sick\w*|cough\w*|medic\w*|doctor\w*|hospital|illness|lungs?|disease|because)\b/;
const MOULD_WORK =
  /^(.+?) (?:(?:goes |is )?(?:back )?(?:on|to|onto)|does|may do|can do|with|gets) (?:the )?mould(?:y)? work$|^(.+?) (?:is )?fit(?: again| for mould work)?$|^(.+?) (?:off|not on|no longer on) clean work$/;
const TOPICS: readonly (readonly [RegExp, NotModelled])[] = [
  [/\bbox(es)? sizes?\b|\bsizes? of box|\bwhich size/, "box sizes"],
  [/\b(money|wages?|budget|costs?|cheaper|price|pay)\b/, "money"],
  [/\b(rains?|monsoon|wet season|weather|humidity|dehumidifier|air ?con\w*|cooled room)\b/, "weather"],
  [/\b(how sure|sample|per cent|%|share)/, "sample"],
  [/\bmask (minutes|time|wear)\b|\bbreak minutes\b|\bbreaks?\b/, "mask breaks"],
];

class Reader {
  private readonly said: string;
  private readonly when: Dated;
  private readonly words: string;
  private readonly names: Names;

  constructor(
    part: string,
    private readonly campaign: Campaign,
    itemsMeant: ItemsMeant,
  ) {
    this.names = new Names(campaign, itemsMeant);
    this.said = part
      .toLowerCase()
      .replace(/\s+/g, " ")
      .replace(/[.?!]+$/, "");
    this.when = dated(this.said, campaign.planFrom);
    this.words = this.when.words.replace(/^(if|suppose|what if) /, "");
  }

  /** What guards people comes before anything else that the words could mean. */
  read(): Read {
    const { noDay } = this.when;
    if (noDay !== null) return { why: "no such day", got: noDay };
    return (
      this.guarded() ??
      this.limit() ??
      this.releases() ??
      this.freezer() ??
      this.roomHeat() ??
      this.person() ??
      this.longerAt() ??
      this.hours() ??
      this.more() ??
      this.late() ??
      this.station() ??
      this.plain() ??
      this.order() ??
      this.topic() ??
      this.holdBack() ?? { why: "not understood" }
    );
  }

  private guarded(): Read | null {
    const { words } = this;
    if (REASONS.test(this.said)) return { why: "no reasons" };
    if (GUARDS.test(words)) return { why: "guards people" };
    if (/\bmould work\b/.test(words) && /^(everyone|all|everybody)\b/.test(words))
      return { why: "mould work" };
    const match = MOULD_WORK.exec(words);
    const who = match?.[1] ?? match?.[2] ?? match?.[3];
    if (who === undefined || /\bmore\b|^another /.test(who)) return null;
    const person = this.names.person(who);
    return typeof person === "string" ? { why: "mould work" } : person;
  }

  private limit(): Read | null {
    const found = LIMITS.find(([form]) => form.test(this.words));
    const value = found && this.firstNumber();
    if (!found || value === null || value === undefined) return found ? { why: "guards people" } : null;
    return { change: "tighter", limit: found[1], value };
  }

  private firstNumber(): number | null {
    const match = new RegExp(`(?:^|\\s)${NUMBER}(?=\\s|$)`).exec(this.words);
    return match ? numberIn(match[1] as string) : null;
  }

  private releases(): Read | null {
    const match =
      /^only (.+?) (?:releases?|may release|can release|tests and releases)$/.exec(this.words) ??
      /^(.+?) alone releases$/.exec(this.words);
    if (!match) return null;
    const person = this.names.person(match[1] as string);
    return typeof person === "string" ? { releases: person } : person;
  }

  private freezer(): Read | null {
    const match = new RegExp(
      `^(?:the )?freezer (?:holds|takes|of) ${NUMBER}(?: items)?(?:,)? (?:(?:per|a|every|each|for) )?${NUMBER}[ -]days?(?: cycles?| each)?$`,
    ).exec(this.words);
    const items = match && numberIn(match[1] as string);
    const cycleDays = match && numberIn(match[2] as string);
    return items && cycleDays ? { freezer: { items, cycleDays } } : null;
  }

  private roomHeat(): Read | null {
    const match =
      /^(?:the )?(?:work )?rooms? (?:at |of )?(\d+(?:\.\d+)?) ?(?:°? ?c|degrees?) (?:and |at |, )?(\d+(?:\.\d+)?) ?(?:%|per cent)(?: rh)?$/.exec(
        this.words,
      );
    if (!match) return null;
    return {
      change: "room heat",
      dryBulb: Number(match[1]),
      relHum: Number(match[2]) / 100,
      ...this.span(),
    };
  }

  /** "Mouldy items last", "last instead of first". */
  private order(): Read | null {
    const match = /^(?:clean |do )?(.+?) (first|last)(?: instead of (?:first|last))?$/.exec(this.words);
    if (!match) return null;
    const words = (match[1] as string).replace(/ (?:items?|things|books|files)$/, "");
    const items = this.names.items(words);
    if (items === null) return this.names.unknown("items", words);
    return { change: "order", items, words, place: match[2] as "first" | "last" };
  }

  private person(): Read | null {
    const forms: readonly (readonly [RegExp, "clean work" | "away"])[] = [
      [
        /^(.+?) (?:is |goes |only )?(?:on|to|does|in) (?:only )?clean work(?: only| this week)?$/,
        "clean work",
      ],
      [/^(.+?) (?:is )?(?:unfit|not fit)(?: for mould work)?$/, "clean work"],
      [/^(.+?) (?:is |goes )?(?:away|absent|off|out|gone|ill|on leave|leaves)$/, "away"],
    ];
    for (const [form, change] of forms) {
      const who = form.exec(this.words)?.[1];
      if (who === undefined || /\b(more|another)\b/.test(who) || this.names.station(who) !== null) continue;
      const person = this.names.person(who);
      return typeof person === "string" ? { change, person, ...this.span() } : person;
    }
    return null;
  }

  /** Hours of a station; those of a person are read by `hours`. */
  private longerAt(): Read | null {
    const match = new RegExp(`^(.+?)(?: there| open)? ${NUMBER} ?(?:hours?|h)(?: a day)?$`).exec(this.words);
    const station = match && this.names.station(match[1] as string);
    const hours = match && numberIn(match[2] as string);
    return station && hours !== null ? { change: "longer at", station, hours } : null;
  }

  private hours(): Read | null {
    const match = new RegExp(`^(.+?) (?:works? |on |only )?${NUMBER} ?(?:hours?|h)(?: a day| each)?$`).exec(
      this.words,
    );
    if (!match) return null;
    const hours = numberIn(match[2] as string);
    const who = match[1] as string;
    const all = /^(everyone|everybody|all|the team)$/.test(who);
    const person = all ? "everyone" : this.names.person(who);
    if (hours === null) return { why: "not understood" };
    return typeof person === "string" ? { change: "hours", who: person, hours, ...this.span() } : person;
  }

  /** People, stations, items or goods: whatever the words after "more" name. */
  private more(): Read | null {
    const ordinal = /^(?:a )?(second|third|fourth|fifth) (.+)$/.exec(this.words);
    const match = new RegExp(`^(?:${NUMBER} more|(another)) (.+)$`).exec(this.words);
    const what = ordinal?.[2] ?? match?.[3];
    if (what === undefined) return null;
    const count = ordinal ? 1 : match?.[2] ? 1 : numberIn(match?.[1] ?? "");
    if (count === null || !Number.isInteger(count)) return { why: "not understood" };
    return (
      this.morePeople(what, count) ??
      this.moreStations(what, count, ordinal?.[1]) ??
      this.moreItems(what, count)
    );
  }

  private morePeople(what: string, count: number): Read | null {
    const match =
      /^(fit )?([a-z ]+?)s?(?: (without|with no|not for|with|for|fit for) mould work| (on|for) clean work| who is fit)?$/.exec(
        what,
      );
    const role = match ? ADDABLE_ROLES.find((each) => each === match[2]) : undefined;
    if (!match || !role) return null;
    const without = match[4] !== undefined || /^(without|with no|not for)$/.test(match[3] ?? "");
    const mouldWork = !without && (["lead", "cleaner"] as AddableRole[]).includes(role);
    return {
      change: "more people",
      role,
      count,
      mouldWork: mouldWork || /^(with|for|fit for)$/.test(match[3] ?? ""),
      ...this.span(),
    };
  }

  private moreStations(what: string, count: number, ordinal: string | undefined): Read | null {
    const kind = stationKindIn(what);
    if (kind === null) return null;
    const there = this.campaign.stations
      .filter((each) => each.kind === kind)
      .reduce((sum, each) => sum + each.places, 0);
    // "A third camera" where there is one means two more.
    const wanted = ordinal === undefined ? count : ORDINALS.indexOf(ordinal) + 2 - there;
    if (wanted < 1) return { why: "how many", most: 5 };
    return { change: "more stations", kind, count: wanted, ...this.span() };
  }

  private moreItems(what: string, count: number): Read | null {
    const like = /^(?:items? |files? |volumes? )?like (.+)$/.exec(what)?.[1];
    const day = this.when.from ?? this.campaign.planFrom;
    const store = like === undefined ? this.names.stores(what) : null;
    if (store?.[0] !== undefined)
      return this.when.from === null
        ? { why: "day missing" }
        : { change: "delivery", store: store[0], day, quantity: count };
    const words = like ?? what.replace(/ items?$/, "");
    const ids = /^items?$/.test(what) ? this.campaign.items.map(({ id }) => id) : this.names.items(words);
    if (ids === null) return this.names.unknown(like === undefined ? "more" : "items", words);
    return { change: "more items", like: ids, words, count, day };
  }

  private late(): Read | null {
    const match = new RegExp(
      `^(?:the )?(.+?) (?:come |comes |are |is |arrive |arrives )?${NUMBER} (days?|weeks?) (late|later|early|earlier)$`,
    ).exec(this.words);
    if (!match) return null;
    const [, name = "", number = "", unit = "", way = ""] = match;
    const stores = this.names.stores(name);
    if (stores === null) return this.names.unknown("store", name);
    const count = numberIn(number);
    if (count === null) return { why: "not understood" };
    const days = Math.round(count * (unit.startsWith("week") ? 7 : 1));
    return { change: "late", stores, days: way.startsWith("early") || way === "earlier" ? -days : days };
  }

  private station(): Read | null {
    const { words } = this;
    const week = /^(?:free )?(.+?) (?:days?|open|there) ((?:mon|tue|wed|thu|fri|sat|sun).*)$/.exec(this.said);
    const weekdays = week ? weekdaysIn(week[2] as string) : null;
    if (week && weekdays) {
      const station = this.names.station(week[1] as string);
      if (station === null) return this.names.unknown("station", week[1] as string);
      return { change: "weekdays", station, weekdays };
    }
    const match =
      /^(?:the )?(.+?) (?:is |gets )?(closed|shut|away|broken|out|down|leaves|gone|open|stays)$/.exec(words);
    if (!match) return null;
    const [, name = "", how] = match;
    const open = how === "open" || how === "stays";
    if (/^(everyone|everybody|all)$/.test(name) || (open && this.isClosedDay(name)))
      return { why: "stays closed" };
    const station = this.names.station(name);
    if (station === null) return this.names.unknown("station", name);
    return { change: open ? "open" : "closed", station, ...this.span() };
  }

  private isClosedDay(name: string): boolean {
    return /^(house|building|we|campaign|team|work)$/.test(name);
  }

  private plain(): Read | null {
    const ward = new RegExp(`^(?:the )?ward(?: of| has| with)? ${NUMBER} ?(?:l|litres?|liters?)$`).exec(
      this.words,
    );
    if (ward) {
      const litres = numberIn(ward[1] as string);
      return litres === null ? { why: "not understood" } : { change: "ward", litres };
    }
    const day = this.when.to ?? this.when.from;
    const until = (last: Day | null): Read =>
      last === null ? { why: "day missing" } : { change: "end", day: last };
    if (/^(?:the )?(?:campaign )?(?:ends?|end date|finish|stop|we stop)$/.test(this.words)) return until(day);
    if (/^(?:everything|all)(?: is| must be)? (?:dry and )?boxed(?: by)?$/.test(this.words))
      return until(day);
    // What must be safe before the rain is boxed on the eve of it.
    return /^(?:the )?(?:rains?|monsoon|wet season)(?: (?:starts?|begins?|comes?))?$/.test(this.words)
      ? until(day && addDays(day, -1))
      : null;
  }

  private topic(): Read | null {
    const found = TOPICS.find(([form]) => form.test(this.said));
    return found ? { why: "not modelled", topic: found[1] } : null;
  }

  private holdBack(): Read | null {
    const words = this.words
      .replace(/^hold back /, "")
      .replace(/ (are |is )?(held back|wait|waits|later|start|starts|only)$/, "");
    const items = this.names.items(words.replace(/ items?$/, ""));
    const until = this.when.from ?? this.when.to;
    if (items === null) return null;
    if (until === null) return { why: "day missing" };
    const begun = new Set(
      this.campaign.sessions.filter((each) => each.act !== "survey").map((each) => each.item),
    );
    return { change: "hold back", items: items.filter((id) => !begun.has(id)), words, until };
  }

  private span() {
    return spanOf(this.when, this.campaign.planFrom, this.campaign.end);
  }
}
