/** Kinds of papers by the name they are asked for, each with what it is. */
export const PAPER_KINDS = {
  "day-sheets": "each person’s day, three working days",
  "station-sheets": "the same days, station by station",
  "bench-cards": "one item: steps, never, not yet, why",
  "bag-tags": "large numbers and signs for bags of the coming fortnight",
  orders: "what to send for, by when",
  picture: "the plan drawn",
  "ward-sheet": "quarantine sheet for the door: every bag, room to read it three times and sign it out",
  "hazard-labels": "what may harm, by ISO 7010 and GHS signs",
  "station-logs": "wipe-downs and tool sets, to be written by hand",
  "box-labels": "boxes filled by the log, and items to be boxed in the fortnight",
  "item-records": "one item: findings, history, pictures; without --item every item",
  exposure: "minutes near mould by person code, with the limits",
  week: "report for a funder: done, to come, finish range",
  stop: "how every item is left safe if work stops in three weeks, or on --stop",
  calendar: "shifts, camera, Ward rounds, look-backs, orders as iCalendar",
  tables: "everything as CSV, described by a datapackage.json",
} as const;

export type PaperKind = keyof typeof PAPER_KINDS;

const kindLines = Object.entries(PAPER_KINDS)
  .map(([name, what]) => `  ${name.padEnd(15)} ${what}`)
  .join("\n");

export const PAPERS_HELP = `leafward papers <folder>: print them, all or some

  --only <kinds>         one or more of those below, with commas between (default: all but item-records)
  --item <number>        the papers of one item: card, tag, hazard and box label, record
  --size a4|letter       paper size (default a4)
  --today yyyy-mm-dd     the morning to print for (default: planFrom of campaign.json, or its start)
  --stop yyyy-mm-dd      last day of work of the stop sheet (default: three weeks on)
  --out <folder>         where they go (default: out/, the campaign folder’s name, papers/)

${kindLines}

Pictures for a record lie in the folder pictures/ of the campaign: JPEG or PNG, named by the item’s number
(SR-0402-before.jpg) or told by the checksum in the log.
Exit codes: 0 printed; 2 it could not be done.`;

export const PAPERS_WORDS = {
  noFolder: "Give one campaign folder: npx leafward papers demo/saltmere --only ward-sheet",
  noKind: (got: string): string => `--only ${got}: expected one of ${Object.keys(PAPER_KINDS).join(", ")}.`,
  notOfItem: (kind: string): string =>
    `--only ${kind} is not about one item: leave out --item, or ask for bench-cards, bag-tags, hazard-labels, box-labels or item-records.`,
  noSize: (got: string): string => `--size ${got}: expected a4 or letter.`,
  noDay: (option: string, got: string): string => `--${option} ${got}: expected a day such as 2026-06-19.`,
  noItem: (item: string, near: readonly string[]): string =>
    `There is no item "${item}".${near.length > 0 ? ` Near it: ${near.join(", ")}.` : ""}`,
  noStop: (stop: string, from: string, end: string): string =>
    `The stop, ${stop}, must lie between the morning reckoned from, ${from}, and the end of the campaign, ${end}.`,
  setting: "Setting the papers …",
  written: (folder: string, files: readonly string[]): string => `Written to ${folder}: ${files.join(", ")}.`,
  nothing: (kinds: readonly string[]): string => `Nothing to print for ${kinds.join(", ")}.`,
  unreadPicture: (name: string): string =>
    `${name} is no JPEG or PNG of at most 20 MB: left out of the record.`,
  noPictures:
    "The pictures of these records cannot be shown: left out. Open them in a picture program and save them anew.",
  caution: "Follow local rules and licensed practice. Readings release, never a date.",
} as const;
