import type { LogDesk } from "../../edge/serve/log-desk.ts";
import type { PlanShelf } from "./plan-shelf.ts";

/** What moves the plan a scenario is held against; work that is done as planned hardly does, and comes with the next plan. */
const MOVES_THE_PLAN = new Set([
  "settingsChanged",
  "placeChanged",
  "limitsChanged",
  "stationsChanged",
  "calendarChanged",
  "personListed",
  "personAway",
  "personHours",
  "cleanWorkThisWeek",
  "itemListed",
  "storeListed",
  "stockCounted",
  "deliveryExpected",
  "deliveryArrived",
  "eventCorrected",
]);

/** Has the what-if service read the campaign again before the next question whenever the log was told of something that moves the plan. */
export function staleWhatIf(desk: LogDesk, shelf: PlanShelf): { end(): Promise<void> } {
  const gone = new AbortController();
  const looking = (async () => {
    const { place } = await desk.state();
    for await (const page of desk.follow(place, gone.signal))
      if (page.some(({ event }) => MOVES_THE_PLAN.has(event.kind))) shelf.now()?.whatIf?.forget();
  })().catch(() => {}); // a log that cannot be read is told where it is asked
  return {
    end: async () => {
      gone.abort();
      await looking;
    },
  };
}
