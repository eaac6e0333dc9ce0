/** Words of the exposure register. Person codes and minutes; nothing about anybody's health can stand in it. */
export const EXPOSURE = {
  kind: "Exposure register",
  title: (code: string): string => `Person ${code}`,
  lead: (minutes: string, days: number): string =>
    `${minutes} min near mould on ${days} ${days === 1 ? "day" : "days"}.`,
  weeks: "By week",
  days: "By day",
  weekColumns: { week: "Week from", days: "Days", minutes: "Minutes" },
  dayColumns: {
    day: "Day",
    work: "Work",
    minutes: "Minutes",
    mask: "Mask and wear (by hand)",
    breaks: "Breaks (by hand)",
  },
  limits: (minutes: number, days: number, row: number): string =>
    `At most ${minutes} min a day, ${days} days a week, ${row} days in a row.`,
  limitSource: (source: string): string => `Source of the limits: ${source}.`,
  over: "over the limit",
  copy: "One copy is this person’s own. Minutes of work on items; changing and washing come on top.",
  nobody: "Nobody worked near mould so far.",
  sign: "Seen and signed",
} as const;
