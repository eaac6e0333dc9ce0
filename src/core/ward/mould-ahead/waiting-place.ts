import type { Act, Campaign, ClimateSeries, Item, WardNote } from "../../items/campaign.ts";

/** Where an item waits, as far as a reader can tell. `bag`: its own climate, followed by its readings. `away`: out of the store, at the benches. */
export type WaitingPlace =
  | { readonly kind: "reader"; readonly series: ClimateSeries }
  | { readonly kind: "no reader" | "bag" | "away" };

const WARD = /ward|quarantine/i;
const WEATHER = /weather|outdoor|outside/i;
/** Rooms where items are worked on, and none waits for its turn. */
const WORK = /clean|bench|camera|studio|boxing/i;
/** Words of a reader's name that tell no place. */
const PLAIN = new Set(["room", "store", "shelf", "reader", "logger", "the"]);
/** Acts after which an item lies at the benches or in its box, no longer where it was found. */
const AWAY: readonly Act[] = ["release", "clean", "wrap", "box"];

/** A year of outdoor weather among the readers, by its file's name. */
export const weatherOf = (climate: readonly ClimateSeries[]): ClimateSeries | null =>
  climate.find(({ name }) => WEATHER.test(name)) ?? null;

/**
 * Finds the reader that stands where an item waits: the one whose name has most words in common with `foundIn` (`film-room` and "Film room rack
 * 2"); where none has and there is one store reader alone, that one. A wrong guess here can only cost order, not safety.
 */
export class WaitingPlaces {
  /** Every reader that may speak for an item. */
  readonly readers: readonly ClimateSeries[];
  private readonly ward: ClimateSeries | undefined;
  private readonly stores: readonly { readonly series: ClimateSeries; readonly words: readonly string[] }[];
  private readonly acts = new Map<string, Set<Act>>();
  private readonly notes = new Map<string, WardNote[]>();

  constructor({ climate, sessions, ward, planFrom }: Campaign) {
    this.ward = climate.find(({ name }) => WARD.test(name));
    this.stores = climate
      .filter(({ name }) => !WARD.test(name) && !WEATHER.test(name) && !WORK.test(name))
      .map((series) => ({ series, words: wordsOf(series.name).filter((word) => !PLAIN.has(word)) }));
    this.readers = [...this.stores.map(({ series }) => series), ...(this.ward ? [this.ward] : [])];
    for (const { item, act } of sessions) this.acts.set(item, (this.acts.get(item) ?? new Set()).add(act));
    for (const note of ward)
      if (note.day < planFrom) this.notes.set(note.item, [...(this.notes.get(note.item) ?? []), note]);
  }

  of(item: Item): WaitingPlace {
    const done = this.acts.get(item.id);
    if (AWAY.some((act) => done?.has(act))) return { kind: "away" };
    if (done?.has("admit")) {
      if (isInBag(this.notes.get(item.id) ?? [])) return { kind: "bag" };
      return readBy(this.ward);
    }
    return readBy(this.storeOf(item.foundIn ?? ""));
  }

  private storeOf(foundIn: string): ClimateSeries | undefined {
    const found = new Set(wordsOf(foundIn));
    let best: ClimateSeries | undefined;
    let most = 0;
    for (const { series, words } of this.stores) {
      const shared = words.filter((word) => found.has(word)).length;
      if (shared > most) [best, most] = [series, shared];
    }
    return best ?? (this.stores.length === 1 ? this.stores[0]?.series : undefined);
  }
}

const readBy = (series: ClimateSeries | undefined): WaitingPlace =>
  series ? { kind: "reader", series } : { kind: "no reader" };

const wordsOf = (text: string): string[] => text.toLowerCase().match(/\p{L}+/gu) ?? [];

/** Admitted, and nobody wrote that its bag was opened since. */
function isInBag(notes: readonly WardNote[]): boolean {
  const inOrder = [...notes].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.minute - b.minute));
  return inOrder.filter(({ what }) => what === "closed" || what === "opened").at(-1)?.what !== "opened";
}
