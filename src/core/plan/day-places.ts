import type { StationRow } from "./problem.ts";
import { KINDS } from "./work.ts";

/** The places of all stations on one day: each as long as its station is open, and nobody at two places of a station at once. */
export class DayPlaces {
  /** [kind of work] → its stations; null: it needs none, or the campaign lists none and so sets no limit. */
  private readonly fitting: readonly (readonly number[] | null)[];
  private readonly open: Float64Array;
  private readonly left: Float64Array;
  /** [station × person] → minutes given. */
  private readonly given: Float64Array;
  /** [station] → people who work there today. */
  private readonly there: Uint16Array;

  constructor(
    private readonly rows: readonly StationRow[],
    private readonly people: number,
  ) {
    this.fitting = KINDS.map(({ station }) => {
      const own = rows.flatMap((row, s) => (row.kind === station ? [s] : []));
      return station === null || (own.length === 0 && station !== "camera") ? null : own;
    });
    this.open = new Float64Array(rows.length);
    this.left = new Float64Array(rows.length);
    this.given = new Float64Array(rows.length * people);
    this.there = new Uint16Array(rows.length);
  }

  morning(d: number): void {
    this.rows.forEach((row, s) => {
      this.open[s] = row.open[d] ?? 0;
      this.left[s] = row.places * (row.open[d] ?? 0);
    });
    this.given.fill(0);
    this.there.fill(0);
  }

  /** Minutes a person can still have at one station for a kind of work. */
  room(kind: number, p: number): number {
    const own = this.fitting[kind];
    if (!own) return Number.POSITIVE_INFINITY;
    let most = 0;
    for (const s of own) most = Math.max(most, this.roomAt(s, p));
    return most;
  }

  /**
   * Gives a person so many minutes, no more than there is room for: where the person is already, else at a station with a place to spare,
   * else at any. Returns the station's id; "": it needs none.
   */
  take(kind: number, p: number, minutes: number): string {
    let at = -1;
    for (const s of this.fitting[kind] ?? [])
      if (this.roomAt(s, p) >= minutes && (at < 0 || this.rank(s, p) < this.rank(at, p))) at = s;
    if (at < 0) return "";
    if (this.givenAt(at, p) === 0) this.there[at] = (this.there[at] as number) + 1;
    this.left[at] = (this.left[at] as number) - minutes;
    this.given[at * this.people + p] = this.givenAt(at, p) + minutes;
    return (this.rows[at] as StationRow).id;
  }

  private rank(s: number, p: number): number {
    if (this.givenAt(s, p) > 0) return 0;
    return (this.there[s] as number) < (this.rows[s] as StationRow).places ? 1 : 2;
  }

  private roomAt(s: number, p: number): number {
    return Math.min(this.left[s] as number, (this.open[s] as number) - this.givenAt(s, p));
  }

  private givenAt(s: number, p: number): number {
    return this.given[s * this.people + p] as number;
  }
}
