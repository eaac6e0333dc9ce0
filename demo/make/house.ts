import type { StoreRow } from "./rows.ts";

/** Limits of people near mould, as the trade holds them. Follow local rules and licensed practice where they are stricter. */
export const limits = {
  exposedMinutesADay: { value: 180, source: "common practice, no source" },
  exposedDaysAWeek: { value: 3, source: "common practice, no source" },
  exposedDaysInARow: { value: 2, source: "earlier table of DGUV Regel 112-190: four shifts a week as 2-1-2" },
  maskMinutes: { value: 75, source: "DGUV Regel 112-190, filtering mask without valve" },
  maskBreakMinutes: { value: 30, source: "DGUV Regel 112-190, filtering mask without valve" },
};

/** One line of the stock ledger. */
export const store = (
  id: string,
  name: string,
  use: string,
  unit: string,
  onHand: number,
  pack: number,
  leadDays: number,
  route: StoreRow["route"],
  more: Partial<StoreRow> = {},
): StoreRow => ({ store: id, name, use, unit, on_hand: onHand, pack, lead_days: leadDays, route, ...more });
