import type { Act, Station } from "../items/campaign.ts";
import type { Day } from "../units/day.ts";
import type { Assignment, ItemDays, PersonDay } from "./plan.ts";
import type { PlanProblem, Task } from "./problem.ts";
import { isStationOpen } from "./station-open.ts";
import type { Piece, Walk } from "./walk.ts";
import { KINDS } from "./work.ts";

/** From this dirt on a station is wiped down after the piece (S01): red rot, dormant mould, poison. */
const WIPE_FROM = 2;

/** Every piece of work as a line of a day sheet: each person from clean to dirty (S09), an item's own acts in their order. */
export function assignmentsOf(problem: PlanProblem, plan: Walk): Assignment[] {
  const sheets = new Map<string, Piece[]>();
  for (const piece of plan.pieces) {
    const key = `${piece.day}|${piece.person}`;
    const sheet = sheets.get(key);
    if (sheet) sheet.push(piece);
    else sheets.set(key, [piece]);
  }
  const places = new StationPlaces(problem);
  return [...sheets.values()].flatMap((pieces) => {
    const ranks = ranksOf(pieces);
    const sorted = pieces.map((piece, at) => ({ piece, at, rank: ranks[at] ?? 0 }));
    sorted.sort(
      (a, b) =>
        a.rank - b.rank || (a.piece.job === b.piece.job ? a.piece.task - b.piece.task : 0) || a.at - b.at,
    );
    return sorted.map(({ piece }, at) => {
      const task = taskOf(piece);
      const minutes = Math.round(piece.minutes * 10) / 10;
      return {
        day: problem.days[piece.day] as Day,
        person: problem.hands[piece.person]?.person.code ?? "",
        station: places.take(task, piece.day, minutes),
        item: piece.job.item.id,
        act: task.act,
        minutes,
        exposed: task.exposed,
        dirt: task.dirt,
        order: at + 1,
        wipeAfter: task.dirt >= WIPE_FROM,
      };
    });
  });
}

const taskOf = (piece: Piece): Task => piece.job.tasks[piece.task] as Task;

/** Clean hands first, then by dirt; no act of an item before an earlier one of the same day. */
function ranksOf(pieces: readonly Piece[]): number[] {
  const own = (piece: Piece): number => (taskOf(piece).exposed ? 10 : 0) + taskOf(piece).dirt;
  return pieces.map((piece) =>
    Math.max(
      ...pieces
        .filter((other) => other.job === piece.job && other.task <= piece.task)
        .map((other) => own(other)),
    ),
  );
}

/** Which of several stations of a kind a piece goes to: an open one with room, else the one with most room left. */
class StationPlaces {
  private readonly left = new Map<string, number>();
  private readonly problem: PlanProblem;

  constructor(problem: PlanProblem) {
    this.problem = problem;
  }

  take(task: Task, day: number, minutes: number): string {
    const { campaign, days } = this.problem;
    const kind = KINDS[task.kind]?.station;
    const date = days[day] as Day;
    const open = campaign.stations.filter(
      (station) => station.kind === kind && isStationOpen(campaign, station, date),
    );
    const room = (station: Station): number =>
      this.left.get(`${day}|${station.id}`) ?? station.places * station.minutesADay;
    const chosen =
      open.find((station) => room(station) >= minutes) ??
      [...open].sort((a, b) => room(b) - room(a))[0] ??
      campaign.stations.find((station) => station.kind === kind);
    if (!chosen) return task.act === "admit" || task.act === "release" ? "Ward" : "";
    this.left.set(`${day}|${chosen.id}`, room(chosen) - minutes);
    return chosen.id;
  }
}

export function personDaysOf(problem: PlanProblem, plan: Walk): PersonDay[] {
  const work = problem.hands.map(() => new Float64Array(problem.days.length));
  const near = problem.hands.map(() => new Float64Array(problem.days.length));
  for (const piece of plan.pieces) {
    const task = piece.job.tasks[piece.task] as Task;
    const series = work[piece.person];
    if (series) series[piece.day] = (series[piece.day] ?? 0) + piece.minutes;
    const exposed = near[piece.person];
    if (exposed && task.exposed) exposed[piece.day] = (exposed[piece.day] ?? 0) + piece.minutes;
  }
  const { overhead } = problem;
  return problem.hands.flatMap((hand, p) =>
    problem.days.flatMap((day, d) => {
      const present = hand.minutes[d] ?? 0;
      if (present === 0) return [];
      const changed = plan.exposed[p]?.[d] === 1;
      return [
        {
          day,
          person: hand.person.code,
          presentMinutes: present,
          workMinutes: Math.round(work[p]?.[d] ?? 0),
          exposedMinutes: Math.round((near[p]?.[d] ?? 0) + (changed ? overhead.exposed : 0)),
          overheadMinutes: changed ? overhead.clean + overhead.exposed : 0,
        },
      ];
    }),
  );
}

export function itemDaysOf(problem: PlanProblem, plan: Walk): ItemDays[] {
  return [...plan.ends].map(([job, ends]) => {
    const days: Partial<Record<Act, Day>> = {};
    job.tasks.forEach((task, s) => {
      const end = ends[s] ?? -1;
      if (end >= 0) days[task.act] = problem.days[end] as Day;
    });
    return { item: job.item.id, days };
  });
}
