/** Steps in one block: few enough to stay near at hand while every meter goes through them in turn. */
const STEPS = 512;

/** Steps that follow each other without a gap, in columns. Each meter goes through the block in a loop of its own, on plain numbers,
 *  a fifth sooner than step by step through all meters. Moments are hours since the series' own zero. */
export class StepBlock {
  count = 0;
  /** Step `i` goes from moment `i` to the next one. */
  readonly moments = new Float64Array(STEPS + 1);
  /** Where growth is judged: °C, 0 to 1, and how far that is above the critical humidity. */
  readonly temperature = new Float64Array(STEPS);
  readonly relHum = new Float64Array(STEPS);
  readonly excess = new Float64Array(STEPS);
  /** The mould index at the end of each step: the index meter fills it in. */
  readonly index = new Float64Array(STEPS);

  get isFull(): boolean {
    return this.count === STEPS;
  }

  startStretch(at: number): void {
    this.count = 0;
    this.moments[0] = at;
  }

  add(to: number, temperature: number, relHum: number, excess: number): void {
    const i = this.count++;
    this.temperature[i] = temperature;
    this.relHum[i] = relHum;
    this.excess[i] = excess;
    this.moments[i + 1] = to;
  }

  /** Empty, and going on from where the last step ended. */
  goOn(): void {
    this.moments[0] = this.moments[this.count] as number; // one moment more than steps
    this.count = 0;
  }
}
