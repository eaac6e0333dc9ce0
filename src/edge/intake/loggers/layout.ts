import type { Problem } from "../../../core/outcome/problem.ts";
import type { OrderHints } from "./date-order.ts";
import type { LoggerReading, WeatherPlace } from "./logger-reading.ts";
import type { ScanPlan } from "./row-scanner.ts";
import type { UnitHints } from "./settle-values.ts";

/** All that is known before the rows are read through. */
export interface Layout {
  readonly kind: LoggerReading["kind"];
  readonly plan: ScanPlan;
  /** Parts of the answer that are settled already. */
  readonly known: Pick<
    LoggerReading,
    "delimiter" | "headingLine" | "headings" | "columns" | "sensors" | "sensor" | "claims" | "offset" | "zone"
  >;
  readonly dates: Omit<OrderHints, "hasHalfDays" | "isFahrenheit">;
  readonly units: Omit<UnitHints, "isDewPoint">;
  readonly place: WeatherPlace | null;
  readonly doubts: readonly Problem[];
}
