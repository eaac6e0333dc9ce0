import type { StationKind } from "../../items/campaign.ts";
import { KINDS } from "../work.ts";
import type { DayModel, Prices } from "./day-model.ts";
import { PersonWeeks } from "./person-weeks.ts";

export interface PriceSearch {
  /** The best prices met, for the certificate. */
  readonly prices: Prices;
  readonly bound: number;
  /** [task] → mean worked day on which the item bought it over the later rounds; past the last day when it was mostly left. */
  readonly meanDay: Float64Array;
  /** [task] → worked day on which the item buys it at the best prices; past the last day when it is left. */
  readonly cheapestDay: Float64Array;
  /** [person][worked day] → share of the later rounds in which the person was exposed. */
  readonly exposed: readonly Float64Array[];
}

/** First step length, as a share of Polyak's; most weight of the newest round in the running means. From trials. */
const FIRST_STEP = 0.1;
const NEWEST = 0.1;
/** Rounds without a better bound before the steps are shortened. */
const PATIENCE = 10;

/**
 * Looks for the prices that prove most. Each round every item buys at the prices, every person sells, and what was oversold on the running
 * mean of the rounds becomes dearer, starting from the best prices so far: the volume algorithm (Barahona and Anbil, Mathematical
 * Programming 87, 2000; from memory), with Polyak's steps towards `upper`, the cost of a known plan.
 * @param goesOn is told the bound after each round and the share of rounds done; false ends the search
 */
export function searchPrices(
  model: DayModel,
  start: Prices,
  upper: number,
  rounds: number,
  goesOn: (bound: number, done: number) => boolean = () => true,
): PriceSearch {
  const market = new Market(model, start);
  let bound = market.trade(1);
  const best = market.price.slice();
  const mean = market.oversold.slice();
  let step = FIRST_STEP;
  let worse = 0;
  for (let round = 1; round < rounds && goesOn(bound, round / rounds); round++) {
    let norm = 0;
    for (let at = 0; at < mean.length; at++) {
      const over = mean[at] as number;
      if (over > 0 || (best[at] as number) > 0) norm += over * over;
    }
    if (norm <= 1e-12) break;
    const length = (step * Math.max(upper * 1.001 - bound, 1e-4 * upper)) / norm;
    for (let at = 0; at < mean.length; at++)
      market.price[at] = Math.max(0, (best[at] as number) + length * (mean[at] as number));
    const value = market.trade(NEWEST);
    let agree = 0;
    for (let at = 0; at < mean.length; at++) {
      agree += (mean[at] as number) * (market.oversold[at] as number);
      mean[at] = (1 - NEWEST) * (mean[at] as number) + NEWEST * (market.oversold[at] as number);
    }
    if (value > bound) {
      bound = value;
      best.set(market.price);
      worse = 0;
      if (agree > 0) step = Math.min(2, step * 1.1);
    } else if (++worse >= PATIENCE) {
      step *= 0.66;
      worse = 0;
    }
  }
  const meanDay = market.meanDay.slice();
  const exposed = market.people.exposed.map((share) => share.slice());
  market.price.set(best);
  market.trade(1);
  return { prices: market.pricesOf(best), bound, meanDay, cheapestDay: market.meanDay, exposed };
}

/** Everything that is bought and sold, in flat rows of one entry a worked day: kinds of work, places, Ward, stores. */
class Market {
  readonly price: Float64Array;
  /** What is bought over what is there, row by row, in scaled units. */
  readonly oversold: Float64Array;
  readonly meanDay: Float64Array;
  readonly people: PersonWeeks;
  private readonly count: number;
  private readonly stations: readonly StationKind[];
  private readonly wardRow: number;
  private readonly storeRow: number;
  /** Units of a row for one unit of its scaled price. */
  private readonly scale: Float64Array;
  private readonly there: Float64Array;
  /** [kind][worked day] → price of a minute by the norm, place and slowness counted. */
  private readonly minutePrice: readonly Float64Array[];
  private readonly wardSum: Float64Array;
  private readonly unit: readonly Float64Array[];
  private readonly taken: readonly Float64Array[];
  private readonly sums: readonly Float64Array[];
  private readonly picks: readonly Int32Array[];
  private readonly drawn: Float64Array;
  private readonly slow: Float64Array;
  private readonly copies: Float64Array;

  constructor(
    private readonly model: DayModel,
    start: Prices,
  ) {
    const { problem, worked, kind } = model;
    this.count = worked.days.length;
    this.stations = [...problem.stations.keys()];
    const rows = KINDS.length + this.stations.length + 1 + problem.stores.length;
    this.wardRow = (KINDS.length + this.stations.length) * this.count;
    this.storeRow = this.wardRow + this.count;
    this.price = new Float64Array(rows * this.count);
    this.oversold = new Float64Array(rows * this.count);
    this.there = this.available();
    this.scale = this.scales();
    this.meanDay = new Float64Array(kind.length);
    this.people = new PersonWeeks(model);
    this.minutePrice = KINDS.map(() => new Float64Array(this.count));
    this.wardSum = new Float64Array(this.count + 1);
    this.unit = problem.stores.map(() => new Float64Array(this.count));
    this.taken = problem.stores.map(() => new Float64Array(this.count));
    const longest = model.alike.reduce((most, [job]) => Math.max(most, job?.tasks.length ?? 0), 0);
    this.sums = Array.from({ length: longest }, () => new Float64Array(this.count + 1).fill(Infinity));
    this.picks = Array.from({ length: longest }, () => new Int32Array(this.count + 1));
    this.drawn = new Float64Array(this.count);
    this.slow = Float64Array.from(worked.days, (d) => problem.slowness[d] ?? 1);
    this.copies = Float64Array.from(model.alike, (jobs) => jobs.length);
    this.priceFrom(start);
  }

  private available(): Float64Array {
    const { problem, worked } = this.model;
    const there = new Float64Array(this.price.length);
    worked.days.forEach((d, i) => {
      this.stations.forEach((station, s) => {
        there[(KINDS.length + s) * this.count + i] = problem.stations.get(station)?.[d] ?? 0;
      });
      there[this.wardRow + i] = problem.wardLitres;
      problem.stores.forEach((store, s) => {
        const arrived = store.arrivals.subarray(0, d + 1).reduce((sum, each) => sum + each, 0);
        there[this.storeRow + s * this.count + i] = d < store.reorderFrom ? store.onHand + arrived : 0;
      });
    });
    return there;
  }

  /** A row's unit is worth about a minute of work, so that one step length suits all rows. */
  private scales(): Float64Array {
    const scale = new Float64Array(this.price.length).fill(1);
    const { problem } = this.model;
    scale.fill(500 / Math.max(1, problem.wardLitres), this.wardRow, this.storeRow);
    problem.stores.forEach((store, s) => {
      const from = this.storeRow + s * this.count;
      scale.fill(500 / Math.max(10, store.onHand), from, from + this.count);
    });
    return scale;
  }

  private priceFrom(start: Prices): void {
    const put = (row: number, series: Float64Array): void => {
      for (let i = 0; i < this.count; i++)
        this.price[row + i] = (series[i] ?? 0) / (this.scale[row + i] as number);
    };
    start.work.forEach((series, k) => {
      put(k * this.count, series);
    });
    this.stations.forEach((station, s) => {
      put((KINDS.length + s) * this.count, start.places.get(station) ?? new Float64Array(0));
    });
    put(this.wardRow, start.ward);
    start.stores.forEach((series, s) => {
      put(this.storeRow + s * this.count, series);
    });
  }

  /** Prices in natural units. */
  pricesOf(scaled: Float64Array): Prices {
    const row = (at: number): Float64Array =>
      scaled.slice(at, at + this.count).map((price, i) => price * (this.scale[at + i] as number));
    return {
      work: KINDS.map((_, k) => row(k * this.count)),
      places: new Map(this.stations.map((station, s) => [station, row((KINDS.length + s) * this.count)])),
      ward: row(this.wardRow),
      stores: this.unit.map((_, s) => row(this.storeRow + s * this.count)),
    };
  }

  /** One round: everybody buys and sells at the prices; returns what the prices prove. */
  trade(newest: number): number {
    const { problem, firstTask } = this.model;
    this.oversold.fill(0);
    for (const series of this.taken) series.fill(0);
    this.readPrices();
    let value = 0;
    for (let j = 0; j + 1 < firstTask.length; j++) value += (this.copies[j] as number) * this.buy(j, newest);
    value -= this.people.sell(this.price, this.unit, this.oversold, this.taken, newest);
    for (let s = 0; s < problem.stores.length; s++) {
      let sum = 0;
      for (let i = 0; i < this.count; i++) {
        sum += this.taken[s]?.[i] ?? 0;
        this.oversold[this.storeRow + s * this.count + i] = sum;
      }
    }
    this.inWardAtEvening();
    for (let at = KINDS.length * this.count; at < this.price.length; at++) {
      const units = this.scale[at] as number;
      const there = this.there[at] as number;
      value -= (this.price[at] as number) * units * there;
      this.oversold[at] = ((this.oversold[at] as number) - there) * units;
    }
    for (let s = 0; s < problem.stores.length; s++) this.forgetOrderable(s);
    return value;
  }

  /** From the day more could be ordered a store limits nothing. */
  private forgetOrderable(s: number): void {
    const { problem, worked } = this.model;
    worked.days.forEach((d, i) => {
      if (d >= (problem.stores[s]?.reorderFrom ?? 0)) this.oversold[this.storeRow + s * this.count + i] = 0;
    });
  }

  private inWardAtEvening(): void {
    let litres = 0;
    for (let i = 0; i < this.count; i++) {
      litres += this.oversold[this.wardRow + i] as number;
      this.oversold[this.wardRow + i] = litres;
    }
  }

  private readPrices(): void {
    const { problem, worked } = this.model;
    KINDS.forEach((kind, k) => {
      const place = kind.station === null ? -1 : this.stations.indexOf(kind.station);
      const series = this.minutePrice[k] as Float64Array;
      for (let i = 0; i < this.count; i++)
        series[i] =
          (this.slow[i] as number) *
          ((this.price[k * this.count + i] as number) +
            (place < 0 ? 0 : (this.price[(KINDS.length + place) * this.count + i] as number)));
    });
    for (let i = 0; i < this.count; i++)
      this.wardSum[i + 1] =
        (this.wardSum[i] as number) +
        (this.price[this.wardRow + i] as number) * (this.scale[this.wardRow + i] as number);
    this.unit.forEach((series, s) => {
      let sum = 0;
      const row = this.storeRow + s * this.count;
      for (let i = this.count - 1; i >= 0; i--) {
        if ((worked.days[i] as number) < (problem.stores[s]?.reorderFrom ?? 0))
          sum += (this.price[row + i] as number) * (this.scale[row + i] as number);
        series[i] = sum;
      }
    });
  }

  /** The item buys its chain of tasks on the cheapest days, or is left; returns what it pays. */
  private buy(j: number, newest: number): number {
    const { model, count, sums, picks } = this;
    const first = model.firstTask[j] as number;
    const last = (model.firstTask[j + 1] as number) - 1;
    const ready = model.ready[j] as number;
    for (let task = last; task >= first; task--) {
      const s = task - first;
      const sum = sums[s] as Float64Array;
      const pick = picks[s] as Int32Array;
      const price = this.minutePrice[model.kind[task] as number] as Float64Array;
      const minutes = model.minutes[task] as number;
      const later = task === last ? (model.finish[j] as Float64Array) : (sums[s + 1] as Float64Array);
      const nextFrom = model.nextFrom[task] as Int32Array;
      const litres = (model.ward[task] as number) * (model.litres[j] as number);
      const drawn = this.drawnCost(task);
      let least = Number.POSITIVE_INFINITY;
      let at = -1;
      for (let i = count - 1; i >= ready; i--) {
        let cost =
          minutes * (price[i] as number) + (later[task === last ? i : (nextFrom[i] as number)] as number);
        if (litres !== 0) cost -= litres * (this.wardSum[i] as number);
        if (drawn) cost += drawn[i] as number;
        if (cost <= least) {
          least = cost;
          at = i;
        }
        sum[i] = least;
        pick[i] = at;
      }
    }
    const pays = ready < count ? (sums[0]?.[ready] as number) : Number.POSITIVE_INFINITY;
    const undone = model.undone[j] as number;
    const left = !(pays < undone);
    let i = ready;
    for (let task = first; task <= last; task++) {
      const on = left ? count + 5 : (picks[task - first]?.[i] as number);
      this.meanDay[task] = (1 - newest) * (this.meanDay[task] as number) + newest * on;
      if (left) continue;
      this.record(j, task, on);
      i = model.nextFrom[task]?.[on] as number;
    }
    return left ? undone : pays;
  }

  /** What a task pays for what it draws from stores that have a price, by worked day; null: nothing. */
  private drawnCost(task: number): Float64Array | null {
    const { drawn } = this;
    let paid = false;
    for (const [store, quantity] of this.model.uses[task] ?? []) {
      const unit = this.unit[store] as Float64Array;
      if ((unit[0] as number) <= 0) continue; // a unit is never dearer than on the first day
      for (let i = 0; i < this.count; i++)
        drawn[i] = (paid ? (drawn[i] as number) : 0) + quantity * (unit[i] as number);
      paid = true;
    }
    return paid ? drawn : null;
  }

  private record(j: number, task: number, i: number): void {
    const { model, count, oversold } = this;
    const k = model.kind[task] as number;
    const copies = this.copies[j] as number;
    const minutes = copies * (model.minutes[task] as number) * (this.slow[i] as number);
    oversold[k * count + i] = (oversold[k * count + i] as number) + minutes;
    const station = KINDS[k]?.station;
    const place = station ? this.stations.indexOf(station) : -1;
    if (place >= 0) {
      const at = (KINDS.length + place) * count + i;
      oversold[at] = (oversold[at] as number) + minutes;
    }
    const ward = model.ward[task] as number;
    if (ward !== 0)
      oversold[this.wardRow + i] =
        (oversold[this.wardRow + i] as number) + copies * ward * (model.litres[j] as number);
    for (const [store, quantity] of model.uses[task] ?? []) {
      const taken = this.taken[store] as Float64Array;
      taken[i] = (taken[i] as number) + copies * quantity;
    }
  }
}
