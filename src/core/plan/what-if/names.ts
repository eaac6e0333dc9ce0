import type { Campaign, StationKind } from "../../items/campaign.ts";
import { ADDABLE_ROLES } from "./change.ts";

/** Which items words such as "mouldy" mean, by what care decided; null: the words mean no kind of item. */
export type ItemsMeant = (words: string) => readonly string[] | null;

/** A name the campaign does not have. */
export interface Unknown {
  readonly why: "unknown";
  readonly kind: "person" | "station" | "store" | "items" | "more";
  readonly got: string;
  /** What it could have been. */
  readonly known: readonly string[];
}

const STATIONS: readonly (readonly [RegExp, StationKind])[] = [
  [/^cameras?$/, "camera"],
  [/^mould bench(es)?$/, "mould bench"],
  [/^clean bench(es)?$/, "clean bench"],
  [/^cover stands?$/, "cover stand"],
  [/^boxing tables?$/, "boxing table"],
];

/** The kind of station words name; null when they name none. */
export const stationKindIn = (words: string): StationKind | null =>
  STATIONS.find(([form]) => form.test(words))?.[1] ?? null;

/** People, stations, stores and items of a campaign by whatever they are called; all words in lower case. */
export class Names {
  constructor(
    private readonly campaign: Campaign,
    private readonly itemsMeant: ItemsMeant,
  ) {}

  /** Items by number, by format (`loose_sheets`, "loose sheets") or by what care says of them. */
  items(words: string): readonly string[] | null {
    const one = this.campaign.items.find(({ id }) => id.toLowerCase() === words);
    if (one) return [one.id];
    const format = words.replaceAll(" ", "_");
    const same = this.campaign.items.filter(
      ({ facts }) => facts.format === format || `${facts.format}s` === format,
    );
    return same.length > 0 ? same.map(({ id }) => id) : this.itemsMeant(words);
  }

  person(said: string): string | Unknown {
    const who = said.replace(/^(?:the )/, "");
    const { people } = this.campaign;
    const is = (text: string): boolean => text.toLowerCase() === who;
    const exact = people.filter(({ code, name }) => is(code) || is(name));
    const found = exact.length > 0 ? exact : people.filter(({ name }) => name.split(/[\s-]+/).some(is));
    const role = found.length > 0 ? found : people.filter(({ role: each }) => is(each));
    if (role.length === 1) return (role[0] as (typeof people)[number]).code;
    return this.unknown("person", who);
  }

  station(said: string): string | null {
    const name = said.replace(/^(?:the |free )/, "");
    const { stations } = this.campaign;
    const kind = stationKindIn(name);
    const byKind = stations.filter((each) => each.kind === kind);
    const byId = stations.find(
      (each) => each.id.toLowerCase().replaceAll("-", " ") === name.replaceAll("-", " "),
    );
    return byId?.id ?? (byKind.length === 1 ? (byKind[0]?.id ?? null) : null);
  }

  /** By id, by use (`k-mask`), by name or by a word of the name. */
  stores(said: string): readonly string[] | null {
    const name = said.replace(/^(?:the )/, "");
    const { stores } = this.campaign;
    const bare = (text: string): string =>
      text
        .toLowerCase()
        .replace(/^k-/, "")
        .replace(/(e?s)$/, "");
    const forms: readonly ((each: (typeof stores)[number]) => boolean)[] = [
      (each) => each.id.toLowerCase() === name || each.name.toLowerCase() === name,
      (each) => each.use.toLowerCase() === name,
      (each) => bare(each.id) === bare(name) || bare(each.use) === bare(name),
      (each) =>
        each.name
          .toLowerCase()
          .split(/[^a-z]+/)
          .some((word) => word.length > 3 && bare(word) === bare(name)),
    ];
    for (const form of forms) {
      const found = stores.filter(form);
      if (found.length > 0) return found.map(({ id }) => id);
    }
    return null;
  }

  unknown(kind: Unknown["kind"], got: string): Unknown {
    const { people, stations, stores, items } = this.campaign;
    const formats = [...new Set(items.map(({ facts }) => String(facts.format)))];
    const known = {
      person: people.flatMap(({ code, name }) => [code, name]),
      station: stations.map(({ id }) => id),
      store: stores.flatMap(({ id, name, use }) => [id, name, use]),
      items: formats,
      more: [
        ...ADDABLE_ROLES,
        ...new Set(stations.map((each) => each.kind)),
        ...stores.map(({ id }) => id),
        ...formats,
      ],
    };
    return { why: "unknown", kind, got, known: known[kind] };
  }
}
