import { day, number, type Table, text, word } from "../columns.ts";
import { consumables } from "../vocabulary.ts";

const columns = {
  store: text({
    required: true,
    help: "Short name of the thing in the store room.",
    examples: ["masks", "gloves"],
  }),
  name: text({
    required: true,
    help: "What it is.",
    examples: ["Respirators, two shapes", "Nitrile gloves, M"],
  }),
  use: word({
    required: true,
    allowed: consumables,
    help: "What it is used as, a consumable of data/norms.json.",
    examples: ["k-mask", "k-gloves"],
  }),
  unit: text({ required: true, help: "Unit it is counted in.", examples: ["pc", "pairs"] }),
  on_hand: number({
    required: true,
    min: 0,
    help: "How many units are here, or were when they were counted.",
    examples: ["400", "600"],
  }),
  pack: number({
    required: false,
    min: 0.001,
    help: "Units in a pack.",
    fallback: "1",
    examples: ["20", "50"],
  }),
  packs: text({
    required: false,
    help: "Packs it is sold in and what each costs, in your own money: `20=8.50 | 100=35`; without prices `20 | 100`.",
    examples: ["20=8.50 | 100=35", ""],
    fallback: "the usual pack",
  }),
  lead_days: number({
    required: true,
    min: 0,
    max: 1000,
    unit: "days",
    help: "Days from order to arrival.",
    examples: ["45", "30"],
  }),
  route: word({
    required: false,
    allowed: ["sea", "air", "local"],
    help: "How it comes.",
    fallback: "local",
    examples: ["air", "air"],
  }),
  expires: day({
    required: false,
    help: "Day after which it is not to be used.",
    examples: ["2029-03-01", ""],
  }),
  counted: day({
    required: false,
    help: "Day on whose morning they were counted; what work has used since is taken off.",
    examples: ["", ""],
    fallback: "the morning of the plan",
  }),
  order_by: day({ required: false, help: "Last day on which it can be ordered.", examples: ["", ""] }),
};

export const storesTable: Table<typeof columns> = {
  name: "stores",
  title: "Stores",
  help: "What is in the store room and how long more of it takes.",
  columns,
  key: ["store"],
  links: {},
  mostRows: 10_000,
  aboutPeople: false,
};
