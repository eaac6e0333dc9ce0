import { day, number, type Table, text } from "../columns.ts";

const columns = {
  store: text({ required: true, help: "Store it belongs to.", examples: ["masks", "gloves"] }),
  date: day({ required: true, help: "Day it is expected.", examples: ["2026-07-06", "2026-07-06"] }),
  quantity: number({ required: true, min: 0, help: "Units that come.", examples: ["200", "300"] }),
  note: text({ required: false, help: "A word for the store keeper.", examples: ["ordered in April", ""] }),
};

export const deliveriesTable: Table<typeof columns> = {
  name: "deliveries",
  title: "Deliveries",
  help: "What is on its way.",
  columns,
  key: [],
  links: { store: "stores" },
  mostRows: 100_000,
  aboutPeople: false,
};
