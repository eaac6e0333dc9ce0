import { WARD_ACTS } from "../../../core/items/campaign.ts";
import { day, number, type Table, text, word } from "../columns.ts";

const columns = {
  date: day({ required: true, help: "Day of the look.", examples: ["2026-06-01", "2026-06-02"] }),
  time: text({
    required: false,
    help: "Time of day, 09:30.",
    examples: ["09:30", "09:40"],
    fallback: "noon",
  }),
  item: text({ required: true, help: "Number of the item in the bag.", examples: ["B-001", "B-001"] }),
  what: word({
    required: true,
    allowed: WARD_ACTS,
    help: "What happened, or what was read.",
    examples: ["closed", "read"],
  }),
  value: number({
    required: false,
    min: 0,
    max: 100_000,
    help: "`closed`: litres of the bag; `gel in`, `gel out`, `weighed`: grams; `read`: % RH.",
    examples: ["12", "71"],
  }),
  temperature_c: number({
    required: false,
    min: -30,
    max: 60,
    unit: "°C",
    help: "Temperature beside the reader.",
    examples: ["26", "26.5"],
  }),
};

export const wardTable: Table<typeof columns> = {
  name: "ward",
  title: "Ward log",
  help: "What happened to each bag, what its reader showed, what it weighed. Ready dates come from it.",
  columns,
  key: [],
  links: { item: "items" },
  mostRows: 500_000,
  aboutPeople: false,
};
