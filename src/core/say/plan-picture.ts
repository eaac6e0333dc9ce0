import type { DrawnStore } from "../plan/picture/drawn-stores.ts";
import type { PlanPicture } from "../plan/picture/plan-picture.ts";
import type { PictureWords } from "../plan/picture/words.ts";
import type { Day } from "../units/day.ts";
import { sayDay, sayNumber } from "./dates.ts";

/* Words on the picture of the plan. */

const LOCALE = "en-GB";
const long = (day: Day): string => sayDay(day, LOCALE, "long");
const tiny = (day: Day): string => sayDay(day, LOCALE, "tiny");
const number = (n: number): string => sayNumber(n, LOCALE, n < 10 ? 1 : 0);
const inMonth = (day: Day, options: Intl.DateTimeFormatOptions): string =>
  new Intl.DateTimeFormat(LOCALE, { ...options, timeZone: "UTC" }).format(new Date(`${day}T12:00:00Z`));

const dayAt = ({ days }: PlanPicture, at: number): Day => days[at] as Day;
/** `11 Feb`, or that it is later than the end. */
const by = (picture: PlanPicture, at: number | null): string =>
  at === null ? "after the end" : `by ${tiny(dayAt(picture, at))}`;

/** The days by which the work is done, as one line. */
const sayFinish = (picture: PlanPicture): string => {
  const { p10, p50, p90 } = picture.finish;
  if (p10 === null) return "Finish: in 9 of 10 simulated campaigns something is left over at the end";
  return `Finish: 1 in 10 ${by(picture, p10)}, half ${by(picture, p50)}, 9 in 10 ${by(picture, p90)}`;
};

const peak = (values: readonly number[]): { value: number; at: number } => {
  const value = Math.max(0, ...values);
  return { value, at: Math.max(0, values.indexOf(value)) };
};
const total = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0);

const storeSentence = (picture: PlanPicture, store: DrawnStore): string =>
  store.out === null
    ? `${store.name} lasts: ${number(store.level.at(-1) ?? 0)} ${store.unit} left on the last day.`
    : `${store.name} would be gone on ${long(dayAt(picture, store.out))}${store.orderBy === null ? "" : `; order by ${long(dayAt(picture, store.orderBy))}`}.`;

function alternative(picture: PlanPicture): string {
  const near = picture.people.filter(({ minutes }) => total(minutes) > 0);
  const fullest = peak(picture.ward);
  const open = total(picture.cameraOpen);
  const people = near.map(({ name, minutes, limit }) => {
    const days = minutes.filter((each) => each > 0).length;
    return `${name} ${number(total(minutes) / 60)} hours on ${days} ${days === 1 ? "day" : "days"}, at most ${number(peak(minutes).value)} of ${limit ?? 0} minutes a day`;
  });
  return [
    `Panels over one axis of days, ${long(dayAt(picture, 0))} to ${long(picture.days.at(-1) as Day)}.`,
    people.length > 0 ? `Near mould: ${people.join("; ")}.` : "Nobody works near mould.",
    fullest.value > 0
      ? `The Ward is fullest on ${long(dayAt(picture, fullest.at))}: ${number(fullest.value)} of ${number(picture.wardLitres)} litres.`
      : "Nothing lies in the Ward.",
    open > 0
      ? `The camera works ${number(total(picture.camera) / 60)} of the ${number(open / 60)} hours it is open.`
      : "There is no camera.",
    ...picture.stores.map((store) => storeSentence(picture, store)),
    `${sayFinish(picture)} (of ${picture.draws} simulated campaigns). The campaign ends on ${long(dayAt(picture, picture.end))}.`,
  ].join(" ");
}

export const PICTURE_WORDS: PictureWords = {
  title: ({ campaign }) => `The plan of ${campaign}`,
  subtitle: (picture) =>
    `${picture.place}. Made for the morning of ${long(dayAt(picture, 0))}; the campaign ends on ${long(dayAt(picture, picture.end))}.`,
  alternative,
  people: "People: minutes near mould a day, changing and washing counted",
  limit: ({ limit }) => `${limit} min a day`,
  cleanWork: "clean work",
  ward: "Ward: litres of closed bags",
  wardLimit: (litres) => `holds ${number(litres)} L`,
  camera: "Camera: hours a day, used of open",
  cameraMost: (minutes) => `${number(minutes / 60)} h`,
  stores: "Stores running down, with what is on its way and nothing more ordered",
  storeLabel: ({ name }) => name.split(",")[0] ?? name,
  storeFirst: ({ full, unit }) => `${number(full)} ${unit}`,
  out: (day) => `gone ${tiny(day)}`,
  delivery: (quantity) => `+${number(quantity)}`,
  finish: sayFinish,
  end: (day) => `End ${tiny(day)}`,
  month: (day) => inMonth(day, { month: "short" }),
  week: tiny,
  year: (day) => inMonth(day, { year: "numeric" }),
  time: (picture) => (picture.days.length <= 75 ? "days; marks: Mondays" : "days; marks: first of the month"),
  key: {
    bar: "planned that day",
    limit: "limit",
    away: "away or closed",
    clean: "clean work only",
    used: "litres, stock",
    open: "camera open",
    delivery: "delivery",
    order: "send the order",
    out: "gone without an order",
    range: "finish: 8 in 10; half: broken line",
  },
};
