type FieldType = "string" | "date" | "integer" | "number" | "boolean";
type Fields = Readonly<Record<string, readonly [type: FieldType, description: string]>>;

const ITEM = ["string", "Number of the item."] as const;
const PERSON = ["string", "Code of the person."] as const;
const day = (what: string) => ["date", what] as const;

const CHANCES: Fields = {
  camera_p10: day("One in ten simulated campaigns has it at the camera by then; empty: not by the end."),
  camera_p50: day("Half of them."),
  camera_p90: day("Nine in ten of them."),
  box_p10: day("One in ten simulated campaigns has it boxed by then."),
  box_p50: day("Half of them."),
  box_p90: day("Nine in ten of them."),
  boxed_percent: ["integer", "Share of simulated campaigns that box it by the end. Unit: %."],
  late_percent: ["integer", "Share that has it late. Unit: %."],
  last_percent: ["integer", "Share that boxes nothing after it. Unit: %."],
};

/** Columns of the plan's tables with type and meaning, table by table; `planTables` writes them. */
export const PLAN_FIELDS: Readonly<Record<string, Fields>> = {
  work: {
    day: day("Day of the work."),
    person: PERSON,
    name: ["string", "Name on the day sheet."],
    order: ["integer", "Place in the person's day, 1 first: clean to dirty."],
    station: ["string", "Where."],
    item: ITEM,
    act: ["string", "What is done."],
    minutes: ["number", "Unit: min."],
    mould_minutes: ["number", "Minutes on the person's mould account. Unit: min."],
    wipe_down_after: ["boolean", "Whether the station is wiped down afterwards."],
  },
  "people-days": {
    day: day("Day."),
    person: PERSON,
    present_minutes: ["number", "Unit: min."],
    work_minutes: ["number", "Unit: min."],
    changing_minutes: ["number", "Changing, laying out and washing on an exposed day. Unit: min."],
    mould_minutes: ["number", "All minutes near mould. Unit: min."],
  },
  "item-days": {
    item: ITEM,
    admit: day("Into the Ward."),
    release: day("Out of the Ward, if its readings allow."),
    covers: day("Covers photographed."),
    wrap: day("Wrapped."),
    clean: day("Cleaned."),
    image: day("Photographed."),
    box: day("Boxed."),
    ...CHANCES,
  },
  left: {
    item: ITEM,
    title: ["string", "What it is called."],
    must: ["boolean", "Whether it must be done by the end."],
    kind: ["string", "No time, set aside, or at the Door."],
    why: ["string", "Why it has no place in the plan."],
    rules: ["string", "Ids of the rules that stop it, with spaces between."],
    ask: ["string", "Whom to ask."],
  },
  orders: {
    order_by: day("Last day to send it."),
    store: ["string", "Store it is for."],
    name: ["string", "What it is."],
    packs: ["integer", "How many packs."],
    quantity: ["number", "How much in all."],
    unit: ["string", "Unit of the quantity."],
    route: ["string", "How it comes."],
    needed_by: day("Day it is needed."),
    late: ["boolean", "Whether it comes too late even if sent today."],
    why: ["string", "What it is for."],
  },
  stores: {
    store: ["string", "Store."],
    name: ["string", "What it is."],
    unit: ["string", "Unit of the amounts."],
    on_hand: ["number", "On hand now."],
    expected: ["number", "On its way."],
    used: ["number", "Used by the plan."],
    runs_out: day("First day on which it is gone with nothing more ordered; empty: it lasts."),
  },
};

/** A plan table's Table Schema; columns nobody described yet are text, so that none is lost. */
export const planSchema = (table: string, columns: readonly string[]): Readonly<Record<string, unknown>> => ({
  fields: columns.map((name) => {
    const [type, description] = PLAN_FIELDS[table]?.[name] ?? (["string", ""] as const);
    return {
      ...{ name, type, description },
      ...(type === "boolean" ? { trueValues: ["yes"], falseValues: ["no"] } : {}),
    };
  }),
  missingValues: [""],
});
