/** A value outside the range in which a model was shown to hold. The value received is always in the message. */
export class OutOfRange extends RangeError {
  override readonly name = "OutOfRange";
  readonly what: string;
  readonly got: number;
  readonly unit: string;
  readonly low: number;
  readonly high: number;

  /** @param what the quantity in the field's words   @param unit as printed, `1` for a fraction */
  constructor(what: string, got: number, unit: string, low: number, high: number) {
    const printed = unit === "1" ? "" : ` ${unit}`;
    super(`${what} is ${got}${printed}, expected ${low} to ${high}${printed}`);
    this.what = what;
    this.got = got;
    this.unit = unit;
    this.low = low;
    this.high = high;
  }
}

/** The value itself, when it lies in the range, ends included.   @throws OutOfRange otherwise, and when it is no number */
export function withinRange(what: string, got: number, unit: string, low: number, high: number): number {
  if (!(got >= low && got <= high)) throw new OutOfRange(what, got, unit, low, high);
  return got;
}
