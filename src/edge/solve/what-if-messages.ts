import type { Answer } from "../../core/plan/what-if/answers.ts";
import type { Change } from "../../core/plan/what-if/change.ts";
import type { Outlook } from "../../core/plan/what-if/compare.ts";
import type { Day } from "../../core/units/day.ts";
import type { SaidRefusal } from "./what-if-desk.ts";

/** What the desk in its worker is told: first the folder, once, then questions, one at a time. */
export type ToDesk =
  | { readonly open: { readonly folder: string; readonly planFrom: Day } }
  | { readonly ask: readonly string[] }
  /** What would help, by so many plans at most. */
  | { readonly ease: number };

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
  /** What is tried now to see whether it helps. */
  | { readonly step: "trying"; readonly ask: string; readonly number: number; readonly of: number }
  /** What binds, what would help, what would not, and what brings in must-do items that are left out: in sentences. */
  | {
      readonly step: "eased";
      readonly binds: readonly string[];
      readonly helps: readonly string[];
      readonly noHelp: readonly string[];
      readonly mustLeft: readonly string[];
      readonly plans: number;
      readonly draws: number;
    }
  | (Answer & { readonly said: readonly string[]; readonly cautions: readonly string[] });

export type FromDesk = { readonly line: DeskLine } | { readonly done: true } | { readonly failure: string };
