import type { Act } from "../items/campaign.ts";
import type { Day } from "../units/day.ts";
import type { Assignment, ItemDays, PersonDay } from "./plan.ts";
import type { PlanProblem, Task } from "./problem.ts";
import type { Piece, Walk } from "./walk.ts";
import { KINDS } from "./work.ts";

/** From this dirt on a station is wiped down after the piece (S01): red rot, dormant mould, poison. */
const WIPE_FROM = 2;

/** Every piece of work as a line of a day sheet: each person from clean to dirty (S09). */
export function assignmentsOf(problem: PlanProblem, plan: Walk): Assignment[] {
  const sheets = new Map<string, Piece[]>();
  for (const piece of plan.pieces) {
    const key = `${piece.day}|${piece.person}`;
    const sheet = sheets.get(key);
    if (sheet) sheet.push(piece);
    else sheets.set(key, [piece]);
  }
  return [...sheets.values()].flatMap((pieces) => {
    const sorted = pieces.map((piece, at) => ({ piece, at, task: piece.job.tasks[piece.task] as Task }));
    sorted.sort((a, b) => rank(a.task) - rank(b.task) || a.at - b.at);
    return sorted.map(({ piece, task }, at) => ({
      day: problem.days[piece.day] as Day,
      person: problem.hands[piece.person]?.person.code ?? "",
      station: stationFor(problem, task),
      item: piece.job.item.id,
      act: task.act,
      minutes: Math.round(piece.minutes * 10) / 10,
      exposed: task.exposed,
      dirt: task.dirt,
      order: at + 1,
      wipeAfter: task.dirt >= WIPE_FROM,
    }));
  });
}

/** Clean hands first, then by dirt. */
const rank = (task: Task): number => (task.exposed ? 10 : 0) + task.dirt;

function stationFor(problem: PlanProblem, task: Task): string {
  const kind = KINDS[task.kind]?.station;
  return (
    problem.campaign.stations.find((station) => station.kind === kind)?.id ??
    (task.act === "admit" || task.act === "release" ? "Ward" : "")
  );
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
