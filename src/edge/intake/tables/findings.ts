import { answer, day, type Table, text } from "../columns.ts";

const columns = {
  item: text({ required: true, help: "Number of the item.", examples: ["B-001", "B-001"] }),
  part: text({
    required: false,
    help: "Part that was tested.",
    fallback: "the whole item",
    examples: ["", "cover"],
  }),
  test: text({
    required: true,
    help: "The test, a word of data/vocabulary.json.",
    examples: ["growth_visible", "rub_mark"],
  }),
  answer: answer({
    required: false,
    help: "What was seen: yes, no, unsure, a number, or the test's own words.",
    fallback: "not tested",
    examples: ["no", "trace"],
  }),
  date: day({ required: false, help: "Day of the test.", examples: ["2026-06-01", "2026-06-01"] }),
  by: text({ required: false, help: "Code of the person who looked.", examples: ["AN", "AN"] }),
};

export const findingsTable: Table<typeof columns> = {
  name: "findings",
  title: "Findings",
  help: "Answers to tests, one row each. What is not here was not tested, which is never a no.",
  columns,
  key: [],
  links: { item: "items" },
  mostRows: 500_000,
  aboutPeople: false,
};
