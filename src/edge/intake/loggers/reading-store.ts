/** Raw readings in columns as they come, before the order of dates and the units are decided. */
export class ReadingStore {
  size = 0;
  /** Packed dates. */
  date: Int32Array;
  /** Milliseconds of the day, on the clock of the file or UTC where the cell says its offset. */
  time: Int32Array;
  line: Int32Array;
  temperature: Float64Array;
  /** Humidity, or the dew point where there is no humidity. */
  second: Float64Array;
  /** Minutes ahead of UTC for each reading; made when the first cell says one. */
  offset: Int16Array | null = null;

  constructor(private capacity: number) {
    this.date = new Int32Array(capacity);
    this.time = new Int32Array(capacity);
    this.line = new Int32Array(capacity);
    this.temperature = new Float64Array(capacity);
    this.second = new Float64Array(capacity);
  }

  add(date: number, time: number, line: number, temperature: number, second: number, offset: number): void {
    const at = this.size;
    if (at === this.capacity) this.grow();
    this.date[at] = date;
    this.time[at] = time;
    this.line[at] = line;
    this.temperature[at] = temperature;
    this.second[at] = second;
    if (offset === offset) this.keepOffset(at, offset); // NaN is not itself
    this.size = at + 1;
  }

  private keepOffset(at: number, minutes: number): void {
    this.offset ??= new Int16Array(this.capacity).fill(NO_OFFSET);
    this.offset[at] = minutes;
  }

  private grow(): void {
    this.capacity = Math.ceil(this.capacity * 1.6) + 1024;
    this.date = grown(this.date, new Int32Array(this.capacity));
    this.time = grown(this.time, new Int32Array(this.capacity));
    this.line = grown(this.line, new Int32Array(this.capacity));
    this.temperature = grown(this.temperature, new Float64Array(this.capacity));
    this.second = grown(this.second, new Float64Array(this.capacity));
    if (this.offset !== null) this.offset = grown(this.offset, new Int16Array(this.capacity).fill(NO_OFFSET));
  }
}

export const NO_OFFSET = 32_767;

function grown<T extends Int32Array | Float64Array | Int16Array>(old: T, fresh: T): T {
  fresh.set(old);
  return fresh;
}
