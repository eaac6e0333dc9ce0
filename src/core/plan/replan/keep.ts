import { firstDayOf, lagAfter } from "../classes.ts";
import { breakMinutes } from "../mask-breaks.ts";
import type { Hand, Job, PlanProblem, Task } from "../problem.ts";
import { expected, KINDS } from "../work.ts";
import { actMoved } from "./churn.ts";
import type { Promised, Promises } from "./promises.ts";

/** How much of the accepted plan is held. */
export interface Hold {
  /** For so many days from the first morning. */
  readonly days: number;
  /** Items of at least this weight that fell behind get a new day at once, others give way to them. */
  readonly rescue: number;
  /** Whether sheets that have become too full are lightened beforehand; else whatever does not fit slips. */
  readonly lightened: boolean;
  /** Promises not held, as holding them was tried and failed. */
  readonly without: ReadonlySet<Promised>;
}

/** A task on somebody's sheet. */
export interface Place extends Promised {
  readonly minutes: number;
  readonly near: boolean;
}

/** Days an item taken off its day waits, roughly: it comes after the days that are held. */
const WAITS = 5;
/** Place in a day, 0 to 1, after all that was told. */
const LAST_OF_DAY = 0.99999;

/** The promises that can be held, each with its day and person; the others are left to the walk. */
export function heldPromises(
  problem: PlanProblem,
  promises: Promises,
  hold: Hold,
): Map<Job, (Place | null)[]> {
  const sheets = new Sheets(problem, promises, hold.days);
  const [usual, rescued] = [false, true].map((is) =>
    problem.jobs.filter(({ weight }) => weight >= hold.rescue === is),
  );
  for (const job of [...(usual ?? []), ...(rescued ?? [])]) followJob(sheets, promises, job, hold);
  if (hold.lightened) sheets.lighten();
  return sheets.held();
}

/** Walks an item along what was promised; a task that cannot be done as told may still be done in time for the next. */
function followJob(sheets: Sheets, { told }: Promises, job: Job, hold: Hold): void {
  let earliest = firstDayOf(job);
  for (const promise of told.get(job) ?? []) {
    if (!promise) return;
    if (hold.without.has(promise)) continue;
    const inTime = promise.day >= earliest && sheets.canDo(promise.person, promise.day, promise);
    const place = inTime ? promise : job.weight >= hold.rescue ? sheets.firstPlace(promise, earliest) : null;
    if (place && place.day < hold.days) sheets.put(place);
    earliest = (place?.day ?? Math.max(0, earliest)) + lagAfter(job, promise.task);
  }
}

/** Minutes of work near mould and of clean work. */
interface Minutes {
  near: number;
  clean: number;
}

const sum = (sheet: readonly Place[]): number => sheet.reduce((all, { minutes }) => all + minutes, 0);

/** The day sheets of the days held. */
class Sheets {
  private readonly sheets: Place[][][];

  constructor(
    private readonly problem: PlanProblem,
    private readonly promises: Promises,
    private readonly days: number,
  ) {
    this.sheets = problem.hands.map(() => Array.from({ length: days }, () => []));
  }

  canDo(p: number, d: number, { job, task }: Promised): boolean {
    const hand = this.problem.hands[p];
    if (!hand?.minutes[d]) return false;
    const kind = KINDS[(job.tasks[task] as Task).kind];
    if (!kind?.skills.some((skill) => hand.person.skills.includes(skill))) return false;
    return !kind.exposed || ((hand.nearMinutes[d] ?? 0) > 0 && this.promises.near[p]?.[d] !== 0);
  }

  /** The first day from `earliest` on which somebody can do the task: who was to do it, else who has least to do. */
  firstPlace(promise: Promised, earliest: number): Promised | null {
    const { order } = promise;
    for (let day = Math.max(0, earliest, promise.day); day < this.days; day++) {
      const at = { ...promise, day, order: day + order - Math.floor(order) };
      if (this.canDo(promise.person, day, promise)) return at;
      const able = [...this.sheets.keys()].filter((p) => this.canDo(p, day, promise));
      able.sort((a, b) => sum(this.sheets[a]?.[day] ?? []) - sum(this.sheets[b]?.[day] ?? []) || a - b);
      if (able[0] !== undefined) return { ...at, person: able[0] };
    }
    return null;
  }

  put(promise: Promised): void {
    const { minutes, kind } = promise.job.tasks[promise.task] as Task;
    this.sheets[promise.person]?.[promise.day]?.push({
      ...promise,
      minutes: expected(minutes) * (this.problem.slowness[promise.day] ?? 1),
      near: KINDS[kind]?.exposed === true,
    });
  }

  /** Day by day, what cannot even be begun is given to somebody with room, or taken off: what costs least to change. */
  lighten(): void {
    const carried = this.sheets.map((): Minutes => ({ near: 0, clean: 0 }));
    for (let d = 0; d < this.days; d++) {
      const off: Place[] = [];
      const rooms = carried.map((before, p) => this.lightenDay(p, d, before, off));
      for (const each of off) this.giveAway(each, rooms);
    }
  }

  /** Minutes left on the sheet. There is always more work near mould, so an exposed day is reckoned as full as was told. */
  private lightenDay(p: number, d: number, carried: Minutes, off: Place[]): Minutes {
    const { hands, overhead } = this.problem;
    const { minutes, nearMinutes } = hands[p] as Hand;
    const sheet = this.sheets[p]?.[d] as Place[];
    const room: Minutes = { near: 0, clean: minutes[d] ?? 0 };
    if (room.clean === 0) return room;
    const told =
      this.promises.near[p]?.[d] ?? (sheet.some(({ near }) => near) ? Number.POSITIVE_INFINITY : 0);
    if (told > 0) {
      room.near = Math.min(nearMinutes[d] ?? 0, told);
      room.clean -= overhead.clean + overhead.exposed + room.near + breakMinutes(this.problem, room.near);
    }
    const kept = (["near", "clean"] as const).flatMap((what) => {
      const own = sheet.filter(({ near }) => near === (what === "near"));
      const fitted = this.fit(own, room[what] - carried[what], off);
      if (room[what] > 0) carried[what] = Math.max(0, -fitted.left);
      room[what] = Math.max(0, fitted.left);
      return fitted.sheet;
    });
    sheet.splice(0, sheet.length, ...kept);
    return room;
  }

  /**
   * Every task that stays on the day can begin on it: when they are too many for the minutes, a long one comes last and goes on the next day;
   * when they cannot all begin even so, some come off. Negative minutes left are carried to the next day.
   */
  private fit(all: readonly Place[], most: number, off: Place[]): { sheet: Place[]; left: number } {
    const sheet = [...all];
    for (;;) {
      const left = most - sum(sheet);
      const last = left < 0 ? this.lastOf(sheet) : null;
      if (!last) return { sheet, left };
      const over = -left - last.minutes + 1;
      if (over < 0) {
        sheet[sheet.indexOf(last)] = { ...last, order: last.day + LAST_OF_DAY };
        return { sheet, left };
      }
      const others = sheet.length > 1 ? sheet.filter((each) => each !== last) : sheet;
      const least = others.reduce((one, each) =>
        this.price(each, over) < this.price(one, over) ? each : one,
      );
      sheet.splice(sheet.indexOf(least), 1);
      off.push(least);
    }
  }

  /** The task to come last: the longest of those that can end the next day without delaying what was told, if there is one. */
  private lastOf(sheet: readonly Place[]): Place | null {
    const free = sheet.filter((each) => this.mayEndNextDay(each));
    const list = free.length > 0 ? free : sheet;
    return list.reduce<Place | null>((one, each) => (one && one.minutes >= each.minutes ? one : each), null);
  }

  private mayEndNextDay({ job, task, day, person, near }: Place): boolean {
    const next = this.promises.told.get(job)?.[task + 1];
    const { minutes, nearMinutes } = this.problem.hands[person] as Hand;
    const there = near ? nearMinutes : minutes;
    let end = day + 1;
    while (end < there.length && !there[end]) end++;
    return !next || next.day >= end + lagAfter(job, task);
  }

  /** What it costs to take a task off, for each minute that helps: changes to what was told, the item's later acts among them, and its wait. */
  private price({ job, task, minutes }: Place, over: number): number {
    const later = (this.promises.told.get(job) ?? []).slice(task);
    const told = later.reduce(
      (all, each) => all + (each && each.day < this.days ? actMoved(each.day) : 0),
      0,
    );
    return (told + job.weight * WAITS) / Math.min(minutes, over);
  }

  /** To the first person with room; not what somebody was to go on with the same day, who may have had a turn by then. */
  private giveAway(place: Place, rooms: readonly Minutes[]): void {
    if (this.promises.told.get(place.job)?.[place.task + 1]?.day === place.day) return;
    const what = place.near ? "near" : "clean";
    const person = rooms.findIndex(
      (room, p) => room[what] >= place.minutes && this.canDo(p, place.day, place),
    );
    const room = rooms[person];
    if (!room) return;
    room[what] -= place.minutes;
    this.sheets[person]?.[place.day]?.push({ ...place, person });
  }

  held(): Map<Job, (Place | null)[]> {
    const held = new Map<Job, (Place | null)[]>();
    for (const place of this.sheets.flat(2)) {
      const tasks = held.get(place.job) ?? place.job.tasks.map(() => null);
      tasks[place.task] = place;
      held.set(place.job, tasks);
    }
    return held;
  }
}
