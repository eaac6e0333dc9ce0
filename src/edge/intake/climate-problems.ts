import type { Problem } from "../../core/outcome/problem.ts";
import { problem } from "./problem.ts";

const HEADINGS = "Put the headings time, temperature_c, rh_pct above the readings.";
const ORDER = 'write yyyy-mm-dd, or set "dates" in campaign.json to "day first" or "month first".';
const OTHER_SENSOR =
  "Keep one sensor in each file; delete the columns or rows of the others if this is the wrong one.";

/** What to do in a campaign folder, where the file itself is all that can be changed. */
const REMEDIES: Readonly<Record<string, string>> = {
  "logger-not-text": "Save the readings as CSV (UTF-8).",
  "logger-no-rows": `Nothing needs to be done if it is no file of readings. If it is one, put the headings time, temperature_c, rh_pct above them.`,
  "logger-no-date": "Write the date into each row.",
  "logger-no-values": HEADINGS,
  "logger-no-readings": `Look at the columns. ${HEADINGS}`,
  "logger-no-headings": HEADINGS,
  "logger-date-order": `If that is wrong, ${ORDER}`,
  "logger-date-order-steps": `If that is wrong, ${ORDER}`,
  "logger-no-year": "Write the year into each date.",
  "logger-several-sensors": OTHER_SENSOR,
  "logger-several-times": "Delete the other columns of time if this is the wrong one.",
  "logger-unit-temperature": "Write the unit into the heading: temperature_c or temperature_f.",
  "logger-unit-humidity": "If that is wrong, write per cent: 55, not 0.55.",
  "logger-numbers-mixed": "Write all of them with one mark if some values look wrong.",
  "logger-summer-time":
    "Nothing needs to be done if that is right; the best is a logger that keeps one time all year.",
};

/** Files that cannot be opened or are of another kind hold somebody up; the rest of the folder is used without the others. */
const TO_MEND: ReadonlySet<string> = new Set(["logger-unreadable", "logger-not-text"]);

/** A problem of a logger file as it concerns a campaign: what was used is a note, and dates that are not certain are asked about, never guessed. */
export function campaignProblem(found: Problem): Problem {
  const { code, severity, file = "", got = "" } = found;
  if (code === "logger-date-order" && severity === "ask")
    return problem(
      "ambiguous-date",
      "ask",
      { file },
      { got, expected: "day first or month first", remedy: `Until then no reading is used: ${ORDER}` },
    );
  const remedy = REMEDIES[code] ?? found.remedy;
  return { ...found, severity: TO_MEND.has(code) ? "stop" : "note", remedy };
}
