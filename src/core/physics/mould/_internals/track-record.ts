import type { Run } from "../climate-series.ts";
import type { StepBlock } from "./step-block.ts";

/** The way of a pass: the mould index at each reading used, and when each lamp was lit. Moments are hours since the series' own zero. */
export class TrackRecord {
  count = 0;
  readonly moments: Float64Array;
  readonly index: Float64Array;
  readonly damp: Run[] = [];
  readonly critical: Run[] = [];
  readonly atOne: Run[] = [];

  /** @param most readings there can be */
  constructor(most: number) {
    this.moments = new Float64Array(most);
    this.index = new Float64Array(most);
  }

  startStretch(at: number, index: number): void {
    this.#add(at, index);
  }

  steps({ moments, index, count }: StepBlock): void {
    // i is below the count, and there is one moment more than steps
    for (let i = 0; i < count; i++) this.#add(moments[i + 1] as number, index[i] as number);
  }

  #add(at: number, index: number): void {
    this.moments[this.count] = at;
    this.index[this.count] = index;
    this.count++;
  }
}
