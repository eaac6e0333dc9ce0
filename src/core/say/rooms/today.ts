import type { Count } from "../page.ts";

const of = (count: Count, one: string, many: string): string => `${count.text} ${count.n === 1 ? one : many}`;

/** Words of the screen a day begins with. */
export const today = {
  title: (day: string) => day,
  intro: "What each room has to do today, who is there, and until when.",
  does: {
    door: "arrival and survey",
    ward: "quarantine and drying",
    bench: "cleaning and wrapping",
    camera: "imaging",
    shelf: "boxing and store",
  },
  here: (items: Count) => `${of(items, "item", "items")} here`,
  none: "Nothing here",
  toDo: (items: Count) => `${of(items, "item", "items")} to do today`,
  nothingToDo: "Nothing planned today",
  done: (items: Count) => `${items.text} done`,
  people: (names: string) => names,
  until: (clock: string) => `until ${clock}`,
  open: (room: string) => `Open ${room}`,
  noPlan: "There is no plan yet.",
  noPlanHelp: "The rooms work without one; in Plan it can be made.",
  disagreements: (items: Count) =>
    `${of(items, "item", "items")} on which two people found different things: to be settled`,
  questions: (questions: Count) => `${of(questions, "question waits", "questions wait")} for an answer`,
} as const;
