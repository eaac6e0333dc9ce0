/** Words of the quarantine sheet that hangs at the door of the Ward. */
export const WARD_SHEET = {
  kind: "Quarantine sheet",
  title: "The Ward",
  rules: {
    head: "Read before you open the door.",
    text: "In only with respirator, goggles, gloves and coverall, never alone in the building, and only people on mould work. Nothing to eat, drink or carry through. Bags are read and opened in the dirty zone.",
  },
  release: {
    head: "Do not release by date.",
    text: "Two readings of 55 % or less, a day apart, no gel in the bag while it is read, and two different people sign. Read every bag at least every third day and change the gel. A reading of 65 % or more, a smell, or new growth: tell the lead today.",
  },
  columns: {
    item: "Item",
    since: "In since",
    because: "Because",
    last: "Last reading",
    next: "Asks for",
    reading: "Day, %, gel g, who",
    out: "Out: day, two sign",
  },
  nothing: "not read yet",
  notClosed: "no bag closed yet",
  gel: "gel in",
  perItem: "Write what you read here first; it is typed up by clean hands later.",
  percent: (n: number): string => `${n} %`,
  earned: "Earned by its readings: a second person looks, both sign.",
} as const;
