import type { Campaign } from "../../../src/core/items/campaign.ts";
import { campaignOf } from "../../../src/core/log/campaign-of.ts";
import type { Json } from "../../../src/core/log/canonical-json.ts";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { fold } from "../../../src/core/log/fold.ts";
import type { Kind, Payload } from "../../../src/core/log/kinds.ts";
import { seenOf } from "../../../src/core/log/seen.ts";
import type { CampaignState } from "../../../src/core/log/state.ts";
import { day, EXAMPLES } from "./examples.ts";
import { deviceCalled } from "./some-events.ts";

export const TODAY = day("2026-06-19");

/** A founded campaign with one listed item, as each device has it before it goes its own way. */
const office = deviceCalled("office");
const base = (["campaignFounded", "itemListed", "storeListed"] as const).map((kind) =>
  office.write({ kind, payload: JSON.parse(JSON.stringify(EXAMPLES[kind])) }),
);

/** A tablet that knows the base and what it wrote itself or was handed. */
export function tablet(name: string) {
  const writer = deviceCalled(name, Date.UTC(2026, 5, 2, 8));
  let state = fold(base);
  return {
    /** Writes with all it knows before its eyes. */
    write<K extends Kind>(kind: K, payload: Payload<K>): LogEvent {
      const seen = seenOf(state, kind, payload);
      const event = writer.write({ kind, payload: payload as unknown as { [key: string]: Json }, seen });
      state = fold([event], state);
      return event;
    },
    take(...events: readonly LogEvent[]): void {
      state = fold(events, state);
    },
  };
}

export const stateWith = (...events: readonly LogEvent[]): CampaignState => fold([...base, ...events]);

export function told(...events: readonly LogEvent[]): Campaign {
  const campaign = campaignOf(stateWith(...events), TODAY);
  if (campaign === null) throw new Error("The campaign was founded.");
  return campaign;
}
