import type { Act } from "../items/campaign.ts";
import { type Day, dayNumber } from "../units/day.ts";
import { placeIn } from "./item-now.ts";
import type { Filed, Payload } from "./kinds.ts";
import { isOf, type Standing } from "./standing.ts";

interface At {
  readonly day: Day;
  readonly minute?: number;
}

/** An item's stay in the Ward, as the log tells it. */
export interface WardStay {
  readonly since: Day;
  /** Empty: in none, as far as anybody wrote. */
  readonly bag: string;
  readonly shelf: string;
  /** Null: never in the freezer during this stay. */
  readonly freezer: FreezerStay | null;
}

export interface FreezerStay {
  /** Since when the days are counted: when it went in, or the last long power cut since. */
  readonly countedFrom: Day;
  readonly isRestarted: boolean;
  /** When it came out; null: it is in. */
  readonly out: { readonly day: Day; readonly minute: number } | null;
}

/** A power cut of so many hours on a day begins the count anew (rule I09). */
const LONG_CUT_HOURS = 4;
/** Acts after which an item is no longer in the Ward. */
const AWAY: readonly (Act | null)[] = ["release", "clean", "wrap", "image", "box"];

/** Null: the item is not in the Ward. */
export function wardStayOf(now: Standing, cuts: readonly Payload<"powerCut">[]): WardStay | null {
  const { counted } = now;
  const left = counted.findLastIndex(hasLeft);
  const stay = counted.slice(left + 1);
  const came = stay.find(hasCome) ?? (left === -1 ? stay.find(isOfBag) : undefined);
  if (came === undefined) return null;
  const place = placeIn(now);
  return {
    since: came.payload.day,
    bag: lastBag(stay),
    shelf: place?.room === "Ward" ? (place.shelf ?? "") : "",
    freezer: freezerStay(stay, cuts),
  };
}

type OfBag = Filed<"bagClosed" | "bagOpened" | "bagRead" | "gelChanged">;
const isOfBag = (event: Filed): event is OfBag =>
  isOf(event, "bagClosed", "bagOpened", "bagRead", "gelChanged");

type Coming = Filed<"itemMoved" | "actDone" | "actCopied">;
const hasCome = (event: Filed): event is Coming =>
  (isOf(event, "itemMoved") && event.payload.room === "Ward") ||
  (isOf(event, "actDone", "actCopied") && event.payload.act === "admit");

const hasLeft = (event: Filed): boolean =>
  isOf(event, "itemReleased", "itemWrapped", "itemBoxed") ||
  (isOf(event, "itemMoved") && event.payload.room !== "Ward") ||
  (isOf(event, "actDone", "actCopied") && AWAY.includes(event.payload.act));

const hourOf = ({ day, minute = 0 }: At): number => dayNumber(day) * 24 + minute / 60;

/** The bag of the newest entry that names one. */
function lastBag(stay: readonly Filed[]): string {
  let [bag, hour] = ["", Number.NEGATIVE_INFINITY];
  for (const event of stay) {
    if (!isOfBag(event) && !isOf(event, "itemMoved")) continue;
    const { payload } = event;
    if (payload.bag !== undefined && hourOf(payload) >= hour) [bag, hour] = [payload.bag, hourOf(payload)];
  }
  return bag;
}

function freezerStay(stay: readonly Filed[], cuts: readonly Payload<"powerCut">[]): FreezerStay | null {
  const moves = stay.flatMap((event) => (isOf(event, "itemMoved") ? [event.payload] : []));
  const last = moves.findLastIndex(({ freezer }) => freezer === true);
  const first = moves.slice(0, last + 1).findLastIndex(({ freezer }) => freezer !== true) + 1;
  const into = moves[first];
  if (last === -1 || into === undefined) return null;
  const out = moves[last + 1];
  const until = out?.day;
  const hours = new Map<Day, number>();
  for (const cut of cuts) hours.set(cut.day, (hours.get(cut.day) ?? 0) + cut.hours);
  const long = [...hours]
    .filter(([day, length]) => length >= LONG_CUT_HOURS && day >= into.day && (!until || day <= until))
    .map(([day]) => day)
    .sort()
    .at(-1);
  return {
    countedFrom: long ?? into.day,
    isRestarted: long !== undefined,
    out: out === undefined ? null : { day: out.day, minute: out.minute ?? 0 },
  };
}
