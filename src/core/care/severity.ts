import type { Care, Route } from "./care.ts";
import { valuesWith } from "./evaluate.ts";
import type { RuleBook } from "./rule-book.ts";
import { NO } from "./truth.ts";

/** How bad a condition is, in the words of the vocabulary; an unsure counts as the worse grade. */
export interface Severity {
  readonly condition: string;
  /** 1 to 4; null where no finding tells. */
  readonly severity: 1 | 2 | 3 | 4 | null;
  readonly words: string;
}

/** The grade of each condition of a care that has a table (`data/severities.json`). */
export function severitiesOf(book: RuleBook, care: Care): Severity[] {
  const values = valuesWith(book, care);
  return [...care.conditions, ...care.unsureConditions].map((condition) => {
    const grading = book.gradings.find((each) => each.condition === condition);
    const grade = grading?.grades.find((each) => each.severity > 0 && each.holds(values) !== NO);
    const severity = (grade?.severity ?? null) as Severity["severity"];
    const words = severity === null ? "" : (book.severities[condition]?.[severity] ?? "");
    return { condition, severity, words: words === "-" ? "" : words };
  });
}

/**
 * The state of a whole item: `good` no action, `fair` to be cleaned or housed, `poor` to be made stable first, `unfit` not to be handled
 * without a conservator. Common practice, no source.
 */
export type Grade = "good" | "fair" | "poor" | "unfit";

export function gradeOf(route: Pick<Route, "destiny" | "wardDays">, severities: readonly Severity[]): Grade {
  if (route.destiny === "set aside") return "unfit";
  const worst = Math.max(0, ...severities.map((each) => each.severity ?? 1));
  if (route.wardDays !== null || worst >= 3) return "poor";
  const troubled = severities.some((each) => each.condition !== "water_sensitive");
  return troubled ? "fair" : "good";
}

/** When something has to happen. Common practice, no source. */
export type Urgency = "today" | "before the camera" | "before the season changes" | "none";

const TODAY =
  /^(wet|insect_active|nitrate_advanced|rodent_contaminated|guano_contaminated|pesticide_suspected)$/;
const BEFORE_CAMERA =
  /^(mould_active|mould_suspected|damp|red_rot|flaking_media|image_layer_unsafe|blocked)$/;

export function urgencyOf(conditions: readonly string[]): Urgency {
  if (conditions.some((each) => TODAY.test(each))) return "today";
  if (conditions.some((each) => BEFORE_CAMERA.test(each))) return "before the camera";
  if (conditions.some((each) => each === "mould_dormant" || each === "insect_uncertain"))
    return "before the season changes";
  return "none";
}
