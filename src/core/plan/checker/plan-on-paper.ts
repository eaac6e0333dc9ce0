import { careOfCampaign, type ItemCare } from "../../care/item-care.ts";
import type { Norms } from "../../care/norms.ts";
import type { RuleBook } from "../../care/rule-book.ts";
import { ACTS, type Act, type Campaign, type Item, type Person, type Station } from "../../items/campaign.ts";
import type { Day } from "../../units/day.ts";
import type { Assignment, ItemDays, PersonDay, Plan } from "../plan.ts";

/** The stores' page is added to a plan last, and may be missing while it is made. */
type PlanToCheck = Omit<Plan, "orders" | "stores"> & Partial<Pick<Plan, "orders" | "stores">>;

/** All pieces of one act of one item. */
interface Passing {
  readonly act: Act;
  readonly first: Day;
  readonly last: Day;
  /** The day the plan says the act ends; undefined: it is begun and not ended. */
  readonly ends: Day | undefined;
  readonly pieces: readonly Assignment[];
}

/**
 * The plan as it is printed beside the campaign as it is given, sorted the ways the checks read them. Care is decided anew. Nothing of
 * the planner or of route making is used here or in any file of this folder: what both hold true stands twice, so that one can find
 * the other wrong.
 */
export class PlanOnPaper {
  readonly items: ReadonlyMap<string, Item>;
  readonly people: ReadonlyMap<string, Person>;
  readonly stations: ReadonlyMap<string, Station>;
  readonly care: ReadonlyMap<string, ItemCare>;
  /** `person|day` → the sheet in its printed order. */
  readonly sheets: ReadonlyMap<string, readonly Assignment[]>;
  readonly personDays: ReadonlyMap<string, PersonDay>;
  readonly itemDays: ReadonlyMap<string, ItemDays>;
  /** Item → its acts in the plan, in the order of the rooms. */
  readonly passings: ReadonlyMap<string, readonly Passing[]>;

  constructor(
    readonly campaign: Campaign,
    book: RuleBook,
    readonly norms: Norms,
    readonly plan: PlanToCheck,
  ) {
    this.items = new Map(campaign.items.map((item) => [item.id, item]));
    this.people = new Map(campaign.people.map((person) => [person.code, person]));
    this.stations = new Map(campaign.stations.map((station) => [station.id, station]));
    this.care = new Map(careOfCampaign(book, campaign).map((care) => [care.item.id, care]));
    this.sheets = groupedBy(plan.assignments, ({ person, day }) => `${person}|${day}`);
    for (const sheet of this.sheets.values()) (sheet as Assignment[]).sort((a, b) => a.order - b.order);
    this.personDays = new Map(plan.personDays.map((each) => [`${each.person}|${each.day}`, each]));
    this.itemDays = new Map(plan.itemDays.map((each) => [each.item, each]));
    this.passings = this.passingsOf(groupedBy(plan.assignments, ({ item }) => item));
  }

  private passingsOf(byItem: ReadonlyMap<string, readonly Assignment[]>): Map<string, Passing[]> {
    return new Map(
      [...byItem].map(([item, pieces]) => {
        const ends = this.itemDays.get(item)?.days;
        const passings = ACTS.flatMap((act) => {
          const own = pieces.filter((piece) => piece.act === act);
          const days = own.map(({ day }) => day).sort();
          const [first] = days;
          const last = days.at(-1);
          return first && last ? [{ act, first, last, ends: ends?.[act], pieces: own }] : [];
        });
        return [item, passings];
      }),
    );
  }

  /** Typical minutes, days or pieces of a norm. */
  typical(norm: string): number {
    return this.norms.band(norm).typical;
  }
}

export function groupedBy<T>(rows: readonly T[], key: (row: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) {
    const group = groups.get(key(row));
    if (group) group.push(row);
    else groups.set(key(row), [row]);
  }
  return groups;
}
