import type { LeftOut } from "./left-out.ts";
import type { ReadingSeries } from "./logger-reading.ts";
import type { ReadingStore } from "./reading-store.ts";

export interface OrderedSeries {
  readonly series: ReadingSeries;
  readonly outOfOrder: number;
  readonly duplicates: { readonly count: number; readonly differing: number };
}

/** The readings by time, each time once: the first row of a time stays; a later one that has what is missing there completes it. */
export function inOrder(store: ReadingStore, minutes: Float64Array, leftOut: LeftOut): OrderedSeries {
  const { backward: outOfOrder, still } = countSteps(minutes);
  if (outOfOrder === 0 && still === 0)
    return { series: asTheyAre(store, minutes), outOfOrder, duplicates: { count: 0, differing: 0 } };
  const rows = outOfOrder === 0 ? null : sortedRows(minutes);
  const at = (i: number): number => (rows === null ? i : (rows[i] as number)); // i stays below the length
  const [time, dryBulb, relHum] = [0, 1, 2].map(() => new Float64Array(minutes.length));
  if (time === undefined || dryBulb === undefined || relHum === undefined)
    throw new Error("three arrays were made above");
  let kept = 0;
  let differing = 0;
  let repeated = 0;
  for (let i = 0; i < minutes.length; i++) {
    const row = at(i);
    const [when, warm, damp] = [
      minutes[row] as number,
      store.temperature[row] as number,
      store.second[row] as number,
    ];
    const last = kept - 1;
    if (last >= 0 && when === time[last]) {
      const [warmHere, dampHere] = [dryBulb[last] as number, relHum[last] as number];
      const isDifferent = differs(warmHere, warm) || differs(dampHere, damp);
      const isCompleting = !isDifferent && (isFilling(warmHere, warm) || isFilling(dampHere, damp));
      if (Number.isNaN(warmHere)) dryBulb[last] = warm;
      if (Number.isNaN(dampHere)) relHum[last] = damp;
      if (isDifferent) differing++;
      if (isCompleting) continue;
      repeated++;
      leftOut.add("same-time", store.line[row] as number);
      continue;
    }
    time[kept] = when;
    dryBulb[kept] = warm;
    relHum[kept] = damp;
    kept++;
  }
  const cut = (values: Float64Array): Float64Array =>
    kept === values.length ? values : values.slice(0, kept);
  return {
    series: { minutes: cut(time), dryBulb: cut(dryBulb), relHum: cut(relHum) },
    outOfOrder,
    duplicates: { count: repeated, differing },
  };
}

const isFilling = (here: number, other: number): boolean => Number.isNaN(here) && !Number.isNaN(other);
/** A value beside a missing one is no contradiction. */
const differs = (a: number, b: number): boolean => a !== b && !Number.isNaN(a) && !Number.isNaN(b);

/** Rows that are in order already are not copied, unless much of the store is empty. */
function asTheyAre({ temperature, second, size }: ReadingStore, minutes: Float64Array): ReadingSeries {
  const cut = (values: Float64Array): Float64Array =>
    values.length > size * 1.25 ? values.slice(0, size) : values.subarray(0, size);
  return { minutes, dryBulb: cut(temperature), relHum: cut(second) };
}

function countSteps(minutes: Float64Array): { readonly backward: number; readonly still: number } {
  let [backward, still] = [0, 0];
  for (let i = 1; i < minutes.length; i++) {
    const step = (minutes[i] as number) - (minutes[i - 1] as number); // i stays inside
    if (step < 0) backward++;
    else if (step === 0) still++;
  }
  return { backward, still };
}

/** Row numbers by time, equal times in the order of the file. */
function sortedRows(minutes: Float64Array): Uint32Array {
  const rows = Uint32Array.from(minutes, (_, i) => i);
  return rows.sort((a, b) => (minutes[a] as number) - (minutes[b] as number) || a - b);
}
