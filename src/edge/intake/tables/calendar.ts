import { day, number, type Table, text, word } from "../columns.ts";

const columns = {
  from: day({ required: true, help: "First day.", examples: ["2026-06-12", "2026-06-15"] }),
  to: day({ required: false, help: "Last day.", fallback: "the first day", examples: ["", "2026-08-14"] }),
  who: text({
    required: true,
    help: "A person's code, a station's id, or everyone.",
    examples: ["everyone", "camera-1"],
  }),
  what: word({
    required: true,
    allowed: ["away", "clean work", "closed", "open", "hours"],
    help: "away or closed: not there; clean work: no mould work; open: a station is there only on its open days; hours: that many hours a day.",
    examples: ["away", "open"],
  }),
  hours: number({
    required: false,
    min: 0,
    max: 24,
    unit: "h",
    help: "Hours a day, for hours.",
    examples: ["", ""],
  }),
  note: text({
    required: false,
    help: "A word for the team; not kept for a person on clean work.",
    examples: ["public holiday", "camera is hired for these days"],
  }),
};

export const calendarTable: Table<typeof columns> = {
  name: "calendar",
  title: "Calendar",
  help: "Days that differ from the ordinary.",
  columns,
  key: [],
  links: {},
  mostRows: 100_000,
  aboutPeople: true,
};
