import { wardLag } from "./classes.ts";
import { DayPlaces } from "./day-places.ts";
import type { Guide } from "./guide.ts";
import { breakMinutes } from "./mask-breaks.ts";
import type { Job, PlanProblem, Task } from "./problem.ts";
import { type Waiter, Waiting } from "./waiting.ts";
import { expected, KINDS } from "./work.ts";

/** What chance decides; the plan itself is walked with the expected values. */
export interface Fortune {
  /** Minutes of a task, slowness of the first weeks not yet applied. */
  readonly minutes: (job: Job, task: number) => number;
  /** Days in the Ward. */
  readonly wardDays: (job: Job) => number;
  readonly absent: (person: number, day: number) => boolean;
  /** Days a delivery comes late. */
  readonly delay: (store: number) => number;
}

export const EXPECTED: Fortune = {
  minutes: (job, task) => expected((job.tasks[task] as Task).minutes),
  wardDays: wardLag,
  absent: () => false,
  delay: () => 0,
};

/** A piece of a task done by a person on a day. */
export interface Piece {
  readonly day: number;
  readonly person: number;
  readonly job: Job;
  readonly task: number;
  /** Id of the station it is done at; "": none. */
  readonly station: string;
  readonly minutes: number;
}

export interface Walk {
  readonly pieces: readonly Piece[];
  /** Job → day each task ends; −1: not reached. */
  readonly ends: ReadonlyMap<Job, Int32Array>;
  /** [person] → 1 on exposed days. */
  readonly exposed: readonly Uint8Array[];
  /** Last day on which a job was boxed; −1: none. */
  readonly lastDay: number;
  readonly boxed: number;
  /** Store → quantity used by day. */
  readonly used: readonly Float64Array[];
}

interface Open extends Waiter {
  readonly job: Job;
  task: number;
  left: number;
  owner: number;
  /** Day and person the task is kept for. */
  kept: { readonly day: number; readonly person: number } | null;
  readonly ends: Int32Array;
}

/** Builds the plan day by day: on each day every person takes the ready work the programme wants soonest, within all limits. */
export function walk(problem: PlanProblem, guide: Guide, fortune: Fortune = EXPECTED): Walk {
  return new Walker(problem, guide, fortune).run();
}

class Walker {
  private readonly queues: readonly Waiting<Open>[] = KINDS.map(() => new Waiting());
  private readonly comingUp: Open[][];
  private readonly exposed: Uint8Array[];
  private readonly pieces: Piece[] = [];
  private readonly stock: Float64Array;
  private readonly used: Float64Array[];
  private readonly places: DayPlaces;
  private readonly present: boolean[] = [];
  private readonly exposing: boolean[] = [];
  /** Whose turn to change into protection is still to come today. */
  private readonly toChange: boolean[] = [];
  private readonly dearest: Float64Array;
  /** [person] → kinds of work the person can do. */
  private readonly kinds: {
    readonly near: readonly (readonly number[])[];
    readonly clean: readonly (readonly number[])[];
  };
  /** Minutes of everybody who is there today. */
  private inBuilding = 0;
  private wardFree: number;
  private lastDay = -1;
  private boxed = 0;
  private readonly opens: Open[];

  constructor(
    private readonly problem: PlanProblem,
    private readonly guide: Guide,
    private readonly fortune: Fortune,
  ) {
    this.comingUp = problem.days.map(() => []);
    this.exposed = problem.hands.map(() => new Uint8Array(problem.days.length));
    this.stock = Float64Array.from(problem.stores, (store) => store.onHand);
    this.used = problem.stores.map(() => new Float64Array(problem.days.length));
    this.places = new DayPlaces(problem.stationRows, problem.hands.length);
    this.wardFree = problem.wardLitres;
    this.kinds = { near: this.kindsOf(true), clean: this.kindsOf(false) };
    this.dearest = Float64Array.from(problem.days, (_, d) =>
      guide.worth.reduce((most, series) => Math.max(most, series[d] ?? 0), 0),
    );
    for (const job of problem.jobs) if (job.inWard) this.wardFree -= job.route.wardLitres;
    this.opens = problem.jobs.map((job, at) => ({
      job,
      at,
      key: 0,
      task: -1,
      left: 0,
      owner: -1,
      kept: null,
      ends: new Int32Array(job.tasks.length).fill(-1),
    }));
    for (const open of this.opens)
      this.next(open, open.job.inWard ? this.fortune.wardDays(open.job) : open.job.ready);
  }

  run(): Walk {
    this.problem.days.forEach((_, d) => {
      this.morning(d);
      const order = this.problem.hands.map((_, p) => p).filter((p) => this.present[p]);
      order.sort((a, b) => this.skillsOf(a) - this.skillsOf(b) || a - b);
      const left = this.problem.hands.map((hand) => hand.minutes[d] ?? 0);
      for (const p of order) this.toChange[p] = true;
      for (const p of order) {
        this.toChange[p] = false;
        if (this.goesNear(p, d)) this.nearMould(p, d, left);
      }
      for (const p of order) this.cleanHands(p, d, left);
    });
    return {
      pieces: this.pieces,
      ends: new Map(this.opens.map((open) => [open.job, open.ends])),
      exposed: this.exposed,
      lastDay: this.lastDay,
      boxed: this.boxed,
      used: this.used,
    };
  }

  private kindsOf(exposed: boolean): number[][] {
    return this.problem.hands.map(({ person }) =>
      [...KINDS.keys()].filter(
        (k) =>
          KINDS[k]?.exposed === exposed && KINDS[k]?.skills.some((skill) => person.skills.includes(skill)),
      ),
    );
  }

  private skillsOf(p: number): number {
    return this.problem.hands[p]?.person.skills.length ?? 0;
  }

  private morning(d: number): void {
    this.problem.stores.forEach((store, s) => {
      const from = d - this.fortune.delay(s);
      this.stock[s] = (this.stock[s] ?? 0) + (from >= 0 ? (store.arrivals[from] ?? 0) : 0);
    });
    this.places.morning(d);
    this.inBuilding = 0;
    this.problem.hands.forEach((hand, p) => {
      this.present[p] = (hand.minutes[d] ?? 0) > 0 && !this.fortune.absent(p, d);
      if (this.present[p]) this.inBuilding += hand.minutes[d] ?? 0;
      this.exposing[p] = false;
    });
    for (const open of this.comingUp[d] ?? []) this.enqueue(open);
  }

  /** The job's next task becomes ready on the day. */
  private next(open: Open, day: number): void {
    open.task++;
    open.owner = -1;
    open.kept = this.guide.kept?.get(open.job)?.[open.task] ?? null;
    open.key = this.guide.wanted.get(open.job)?.[open.task] ?? 0;
    open.left = this.fortune.minutes(open.job, open.task);
    this.comingUp[day]?.push(open);
  }

  private enqueue(open: Open): void {
    this.queues[open.job.tasks[open.task]?.kind ?? 0]?.add(open);
  }

  /** Whether the person changes into protection today: allowed, in stock, wanted by the programme, and worth the changing. */
  private goesNear(p: number, d: number): boolean {
    const { problem } = this;
    const worn = this.exposed[p];
    if (!worn || this.nearMinutes(p, d) <= 0 || this.hasHadEnough(p, d)) return false;
    for (const [store, quantity] of problem.sessionUses)
      if (d < this.reorderFrom(store) && (this.stock[store] ?? 0) < quantity) return false;
    let done = 0;
    for (let e = 0; e < d; e++) done += worn[e] ?? 0;
    const behind = (this.guide.exposedBy[p]?.[d] ?? 0) - done >= 0.5;
    return this.worthChanging(p, d, behind);
  }

  /** Minutes the person may work near mould today: never longer than the others who are really there (P13). */
  private nearMinutes(p: number, d: number): number {
    const hand = this.problem.hands[p] as PlanProblem["hands"][number];
    const company = this.inBuilding - (hand.minutes[d] ?? 0);
    return Math.min(hand.nearMinutes[d] ?? 0, company - this.problem.overhead.exposed);
  }

  /** Whether the week's exposed days, or those in a row, are used up, the days before the first morning among them. */
  private hasHadEnough(p: number, d: number): boolean {
    const { hands, weekday, exposedDaysAWeek, exposedDaysInARow } = this.problem;
    const { exposedBefore } = hands[p] as PlanProblem["hands"][number];
    const worn = this.exposed[p] as Uint8Array;
    const monday = d - (weekday[d] ?? 0);
    let week = monday <= 0 ? exposedBefore.week : 0;
    for (let e = Math.max(0, monday); e < d; e++) week += worn[e] ?? 0;
    let row = 0;
    while (row < d && worn[d - 1 - row]) row++;
    if (row === d) row += exposedBefore.row;
    return week >= exposedDaysAWeek || row >= exposedDaysInARow;
  }

  /** Changing takes an hour and a half, so a little work waits for more, but not for ever. */
  private worthChanging(p: number, d: number, behind: boolean): boolean {
    let minutes = 0;
    for (const k of this.kinds.near[p] as readonly number[]) {
      const queue = this.queues[k] as Waiting<Open>;
      for (let n = 0; n < queue.length; n++) {
        const open = queue.nth(n);
        const wanted = open.key;
        if (wanted < d - this.guide.manner.patience) return true;
        if (!behind && wanted > d) break;
        minutes += open.left;
        if (minutes >= this.guide.manner.session) return true;
      }
    }
    return false;
  }

  private nearMould(p: number, d: number, left: number[]): void {
    const { overhead } = this.problem;
    this.exposing[p] = true;
    const spent = this.work(p, d, this.nearMinutes(p, d), true);
    if (spent === 0) {
      this.exposing[p] = false;
      return;
    }
    (this.exposed[p] as Uint8Array)[d] = 1;
    left[p] = (left[p] ?? 0) - spent - overhead.clean - overhead.exposed - breakMinutes(this.problem, spent);
    for (const [store, quantity] of this.problem.sessionUses) this.use(store, d, quantity);
  }

  private cleanHands(p: number, d: number, left: number[]): void {
    left[p] = (left[p] ?? 0) - this.work(p, d, left[p] ?? 0, false);
  }

  /** Takes the soonest wanted work the person may do until the minutes are used. */
  private work(p: number, d: number, minutes: number, exposed: boolean): number {
    const kinds = this.kinds[exposed ? "near" : "clean"][p] as readonly number[];
    let spent = 0;
    while (minutes - spent > 1) {
      let best: Open | null = null;
      let from = -1;
      for (const k of kinds) {
        const open = this.first(k, p, d, minutes - spent);
        if (open && (!best || this.before(open, k, best, from, d))) {
          best = open;
          from = k;
        }
      }
      if (!best) break;
      const piece = this.take(best, from, p, d, minutes - spent);
      if (piece === 0) break;
      spent += piece;
    }
    return spent;
  }

  /** What is begun or kept for today first, then clearly dearer work, else what is wanted sooner. */
  private before(one: Open, k: number, other: Open, l: number, d: number): boolean {
    const first = one.owner >= 0 || one.kept !== null;
    const second = other.owner >= 0 || other.kept !== null;
    if (first !== second) return first;
    const rank = this.rank(k, d) - this.rank(l, d);
    return rank !== 0 ? rank > 0 : one.key < other.key;
  }

  private rank(k: number, d: number): number {
    const { worth, manner } = this.guide;
    if (manner.sameWorth >= 1 || worth.length === 0) return 0;
    return Math.floor((worth[k]?.[d] ?? 0) / Math.max(1e-9, manner.sameWorth * (this.dearest[d] ?? 0)));
  }

  /**
   * First job of a queue this person can go on with now; a job begun stays with who began it while that person can go on.
   * When the first cannot be finished in the minutes left, one of the next that can may take its place.
   */
  private first(k: number, p: number, d: number, minutes: number): Open | null {
    if (this.places.room(k, p) < 1) return null;
    let next: Open | null = null;
    let looked = 0;
    const queue = this.queues[k] as Waiting<Open>;
    for (let n = 0; n < queue.length; n++) {
      const open = queue.nth(n);
      const { owner } = open;
      if (owner >= 0 && owner !== p && this.goesOn(owner, k, d)) continue;
      if (owner < 0 && (this.isKeptFrom(open, p, d) || !this.mayStart(open, d))) continue;
      const fits = open.left * (this.problem.slowness[d] ?? 1) <= minutes;
      if (fits || ((owner >= 0 || open.kept) && !next)) return open;
      next ??= open;
      if (++looked >= this.guide.manner.fitting) return next;
    }
    return next;
  }

  /** Whether a person can go on today with work of a kind: near mould, when changed already or while the turn to change is still to come. */
  private goesOn(p: number, k: number, d: number): boolean {
    if (!this.present[p] || !KINDS[k]?.exposed) return this.present[p] === true;
    if (this.exposing[p]) return true;
    return this.toChange[p] === true && this.nearMinutes(p, d) > 0 && !this.hasHadEnough(p, d);
  }

  /** Whether a job nobody has begun is kept for a day to come, or today for somebody else who is there. */
  private isKeptFrom({ kept }: Open, p: number, d: number): boolean {
    if (!kept) return false;
    return d < kept.day || (d === kept.day && p !== kept.person && this.present[kept.person] === true);
  }

  private mayStart(open: Open, d: number): boolean {
    const task = open.job.tasks[open.task] as Task;
    if (task.act === "admit" && open.job.route.wardLitres > this.wardFree) return false;
    for (const [store, quantity] of task.uses)
      if (d < this.reorderFrom(store) && (this.stock[store] ?? 0) < quantity) return false;
    return true;
  }

  /** First day on which an order sent on the first morning would be here, late as this store's deliveries come. */
  private reorderFrom(store: number): number {
    return (this.problem.stores[store]?.reorderFrom ?? 0) + this.fortune.delay(store);
  }

  private use(store: number, d: number, quantity: number): void {
    this.stock[store] = (this.stock[store] ?? 0) - quantity;
    const used = this.used[store];
    if (used) used[d] = (used[d] ?? 0) + quantity;
  }

  /** Works on a job; returns the minutes spent. */
  private take(open: Open, k: number, p: number, d: number, minutes: number): number {
    const task = open.job.tasks[open.task] as Task;
    const slow = this.problem.slowness[d] ?? 1;
    const spent = Math.min(minutes, this.places.room(k, p), open.left * slow);
    if (spent <= 0) return 0;
    if (open.owner < 0) {
      for (const [store, quantity] of task.uses) this.use(store, d, quantity);
      if (task.act === "admit") this.wardFree -= open.job.route.wardLitres;
    }
    open.owner = p;
    open.left -= spent / slow;
    const station = this.places.take(k, p, spent);
    this.pieces.push({ day: d, person: p, job: open.job, task: open.task, station, minutes: spent });
    if (open.left < 1e-6) this.finish(open, k, d);
    return spent;
  }

  private finish(open: Open, k: number, d: number): void {
    this.queues[k]?.remove(open);
    open.ends[open.task] = d;
    const task = open.job.tasks[open.task] as Task;
    if (task.act === "release") this.wardFree += open.job.route.wardLitres;
    if (open.task === open.job.tasks.length - 1) {
      this.boxed++;
      this.lastDay = Math.max(this.lastDay, d);
      return;
    }
    const following = open.job.tasks[open.task + 1] as Task;
    if (following.act === "box") {
      this.next(open, -1);
      this.enqueue(open);
    } else this.next(open, d + (task.act === "admit" ? this.fortune.wardDays(open.job) : 1));
  }
}
