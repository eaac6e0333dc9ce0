import type { Answer } from "../../core/plan/what-if/answers.ts";
import type { Change } from "../../core/plan/what-if/change.ts";
import type { Outlook } from "../../core/plan/what-if/compare.ts";
import type { Day } from "../../core/units/day.ts";
import type { SaidRefusal } from "./what-if-desk.ts";

/** What the desk in its worker is told: first the folder, once, then questions, one at a time. */
export type ToDesk =
  | { readonly open: { readonly folder: string; readonly planFrom: Day } }
  | { readonly ask: readonly string[] };

/** What it says, line by line; `done` ends a question. */
export type DeskLine =
  | { readonly step: "refused"; readonly refusals: readonly SaidRefusal[] }
  /** What each scenario supposes, in its order. */
  | {
      readonly step: "understood";
      readonly supposed: readonly (readonly string[])[];
      readonly changes: readonly (readonly Change[])[];
    }
  | { readonly step: "as it is"; readonly outlook: Outlook; readonly draws: number }
  | (Answer & { readonly said: readonly string[]; readonly cautions: readonly string[] });

export type FromDesk = { readonly line: DeskLine } | { readonly done: true } | { readonly failure: string };
