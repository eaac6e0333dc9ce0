import { ACTS } from "../../../core/items/campaign.ts";
import { day, number, type Table, text, word, yesOrNo } from "../columns.ts";

const columns = {
  date: day({ required: true, help: "Day of the work.", examples: ["2026-06-01", "2026-06-01"] }),
  item: text({ required: true, help: "Number of the item.", examples: ["B-001", "B-002"] }),
  act: word({ required: true, allowed: ACTS, help: "What was done.", examples: ["survey", "survey"] }),
  person: text({ required: true, help: "Code of the person.", examples: ["AN", "AN"] }),
  minutes: number({
    required: true,
    min: 0,
    max: 1440,
    unit: "min",
    help: "How long it took.",
    examples: ["6", "5"],
  }),
  exposed: yesOrNo({ required: true, help: "Whether it was near mould.", examples: ["no", "no"] }),
};

export const sessionsTable: Table<typeof columns> = {
  name: "sessions",
  title: "Sessions",
  help: "Work already done.",
  columns,
  key: [],
  links: { item: "items", person: "people" },
  mostRows: 500_000,
  aboutPeople: false,
};
