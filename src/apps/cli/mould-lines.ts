import { sayMouldAhead } from "../../core/say/mould-outlook.ts";
import { mouldOutlooks } from "../../core/ward/mould-outlook.ts";
import type { PlannedFolder } from "./plan-folder.ts";

/** Where mould could begin on what waits, a line for each store, under the plan's answer. */
export const mouldLines = ({ campaign, plan }: PlannedFolder): string[] =>
  sayMouldAhead(mouldOutlooks(campaign), plan).map(
    (line, at) => `${at === 0 ? "Mould" : ""}`.padEnd(12) + line,
  );
