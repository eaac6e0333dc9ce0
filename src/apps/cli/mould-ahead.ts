import { sayMouldAhead } from "../../core/say/mould-outlook.ts";
import { mouldOutlooks } from "../../core/ward/mould-outlook.ts";
import type { PlannedFolder } from "./plan-folder.ts";

/** Where mould could begin on what waits, a sentence or two for each store. */
export const mouldAhead = ({ campaign, plan }: PlannedFolder): string[] =>
  sayMouldAhead(mouldOutlooks(campaign), plan);
