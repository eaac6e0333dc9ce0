import { rowOf } from "../../../src/apps/web/log/item-row.ts";
import { type Now, nowMaker } from "../../../src/apps/web/log/now.ts";
import { loadNorms } from "../../../src/core/care/norms.ts";
import type { Item } from "../../../src/core/items/campaign.ts";
import type { Json } from "../../../src/core/log/canonical-json.ts";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { fold } from "../../../src/core/log/fold.ts";
import type { Kind, Payload } from "../../../src/core/log/kinds.ts";
import type { Role } from "../../../src/core/log/roles.ts";
import { seenOf } from "../../../src/core/log/seen.ts";
import { EMPTY_STATE } from "../../../src/core/log/state.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";
import { day, EXAMPLES } from "../../core/log/examples.ts";
import { deviceCalled } from "../../core/log/some-events.ts";

export const TODAY = day("2026-06-19");
const tables = { book: publishedRuleBook(), norms: loadNorms(readPublished("norms.json")) };

/** A small campaign as one device knows it: written to, and asked through `now`. */
export function aTablet(device = "tablet") {
  const office = deviceCalled("office");
  const own = deviceCalled(device, Date.UTC(2026, 5, 2, 8));
  let state = fold(
    (["campaignFounded", "personListed"] as const).map((kind) =>
      office.write({ kind, payload: JSON.parse(JSON.stringify(EXAMPLES[kind])) }),
    ),
    EMPTY_STATE,
  );
  const make = nowMaker();
  return {
    /** Writes with all this device knows before its eyes. */
    write<K extends Kind>(kind: K, payload: Payload<K>): LogEvent {
      const seen = seenOf(state, kind, payload);
      const event = own.write({ kind, payload: payload as unknown as { [key: string]: Json }, seen });
      state = fold([event], state);
      return event;
    },
    take(...events: readonly LogEvent[]): void {
      state = fold(events, state);
    },
    now(role: Role = "lead"): Now {
      const me = { device, role, person: null, campaign: "saltmere", writes: [], pretendDay: null };
      const moment = { me, today: TODAY, minute: 600, state, tables, work: null, rowsToCome: 0 };
      const first = make({ ...moment, rows: [] });
      const rows = first?.itemIds.flatMap((id) => rowOf(first.item(id) ?? fail(id))) ?? [];
      return make({ ...moment, rows }) ?? fail("founded");
    },
  };
}

/** An item as it is listed, sound until something is found. */
export const listed = (item: string, facts: Item["facts"]): Payload<"itemListed"> => ({
  ...{ item, facts, title: `Item ${item}`, priority: "want" },
});

function fail(what: string): never {
  throw new Error(`There is none: ${what}`);
}
