/** A cell as it is written; a list is joined with `|`, an absent cell stays empty. */
export type Cell = string | number | readonly string[] | undefined;

export interface ItemRow {
  item: string;
  title: string;
  format: string;
  support?: string;
  media?: readonly string[];
  cover?: string;
  process?: string;
  has?: readonly string[];
  leaves?: number;
  height_mm?: number;
  width_mm?: number;
  thickness_mm?: number;
  mass_kg?: number;
  date_earliest?: number;
  date_latest?: number;
  arrives?: string;
  due?: string;
  priority?: "must" | "want";
  found_in?: string;
  custodian_rule?: string;
  restricted_view?: "yes";
  neighbours_unchecked?: "yes";
}

export interface PartRow {
  item: string;
  part: string;
  format?: string;
  support?: string;
  media?: readonly string[];
  cover?: string;
  has?: readonly string[];
  leaves?: number;
}

export interface FindingRow {
  item: string;
  part: string;
  test: string;
  answer: string | number;
  date: string;
  by: string;
}

export interface PersonRow {
  person: string;
  name: string;
  role: string;
  skills?: readonly string[];
  mould_work: "yes" | "no";
  workdays?: readonly string[];
  hours?: number;
  from?: string;
  until?: string;
}

export interface CalendarRow {
  from: string;
  to?: string;
  who: string;
  what: "away" | "clean work" | "closed" | "open" | "hours";
  hours?: number;
  note?: string;
}

export interface StoreRow {
  store: string;
  name: string;
  use: string;
  unit: string;
  on_hand: number;
  pack: number;
  lead_days: number;
  route: "sea" | "air" | "local";
  expires?: string;
  order_by?: string;
}

export interface DeliveryRow {
  store: string;
  date: string;
  quantity: number;
  note?: string;
}

export interface SessionRow {
  date: string;
  item: string;
  act: string;
  person: string;
  minutes: number;
  exposed: "yes" | "no";
}

export interface WardRow {
  date: string;
  time: string;
  item: string;
  what: "closed" | "opened" | "gel in" | "gel out" | "read" | "weighed";
  value?: number;
  temperature_c?: number;
}

export interface ClimateRow {
  time: string;
  temperature_c?: string;
  rh_pct?: string;
}

/** The headings of every table, in the order they are written. */
export const HEADINGS = {
  items: [
    "item",
    "title",
    "format",
    "support",
    "media",
    "cover",
    "process",
    "has",
    "leaves",
    "height_mm",
    "width_mm",
    "thickness_mm",
    "mass_kg",
    "date_earliest",
    "date_latest",
    "arrives",
    "due",
    "priority",
    "found_in",
    "custodian_rule",
    "restricted_view",
    "neighbours_unchecked",
  ],
  parts: ["item", "part", "format", "support", "media", "cover", "has", "leaves"],
  findings: ["item", "part", "test", "answer", "date", "by"],
  people: ["person", "name", "role", "skills", "mould_work", "workdays", "hours", "from", "until"],
  calendar: ["from", "to", "who", "what", "hours", "note"],
  stores: ["store", "name", "use", "unit", "on_hand", "pack", "lead_days", "route", "expires", "order_by"],
  deliveries: ["store", "date", "quantity", "note"],
  sessions: ["date", "item", "act", "person", "minutes", "exposed"],
  ward: ["date", "time", "item", "what", "value", "temperature_c"],
  climate: ["time", "temperature_c", "rh_pct"],
} as const;

export interface Tables {
  readonly items: readonly ItemRow[];
  readonly parts: readonly PartRow[];
  readonly findings: readonly FindingRow[];
  readonly people: readonly PersonRow[];
  readonly calendar: readonly CalendarRow[];
  readonly stores: readonly StoreRow[];
  readonly deliveries: readonly DeliveryRow[];
  readonly sessions: readonly SessionRow[];
  readonly ward: readonly WardRow[];
}

/** A whole invented campaign, ready to be written as a folder. */
export interface Invented {
  readonly folder: string;
  /** The content of `campaign.json`. */
  readonly campaign: Readonly<Record<string, unknown>>;
  readonly tables: Tables;
  /** Reader's name → its log. */
  readonly climate: Readonly<Record<string, readonly ClimateRow[]>>;
}
