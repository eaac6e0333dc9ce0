import type { Route } from "../../../core/care/care.ts";
import type { ItemCare } from "../../../core/care/item-care.ts";
import type { Finding, Item, Session, WardNote } from "../../../core/items/campaign.ts";
import type { Disagreement } from "../../../core/log/findings-now.ts";
import type { ItemHistory } from "../../../core/log/item-history.ts";
import type { Filed, Payload } from "../../../core/log/kinds.ts";

/** One item as everything written so far tells it. */
export interface ItemNow {
  readonly item: Item;
  /** Its entries in the order of the log, with those that no longer count. */
  readonly events: readonly Filed[];
  readonly findings: readonly Finding[];
  readonly sessions: readonly Session[];
  readonly ward: readonly WardNote[];
  /** Where it was last put; null: nobody wrote it down. */
  readonly place: Payload<"itemMoved"> | null;
  readonly disagreements: readonly Disagreement[];
  readonly history: ItemHistory;
  readonly care: ItemCare;
  readonly route: Route;
}
