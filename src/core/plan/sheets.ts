import type { Act } from "../items/campaign.ts";
import type { Day } from "../units/day.ts";
import { WIPE_FROM } from "./day-order.ts";
import type { Assignment, ItemDays, PersonDay } from "./plan.ts";
import type { PlanProblem, Task } from "./problem.ts";
import { teamOrder } from "./team-order.ts";
import type { Piece, Walk } from "./walk.ts";

/** Every piece of work as a line of a day sheet, each person's day in its exact order. */
export function assignmentsOf(problem: PlanProblem, plan: Walk): Assignment[] {
  return groupedBy(plan.pieces, ({ day }) => day).flatMap((ofDay) => {
    const sheets = groupedBy(ofDay, ({ person }) => person).map((pieces) =>
      pieces.map((piece) => ({ ...lineOf(problem, piece), changeOver: 0, due: piece.job.due })),
    );
    return teamOrder(sheets, problem.campaign.stations).flatMap((order, at) =>
      order.map((place, n) => {
        const { changeOver: _, due: __, ...line } = sheets[at]?.[place] as (typeof sheets)[number][number];
        return { ...line, order: n + 1 };
      }),
    );
  });
}

function lineOf(problem: PlanProblem, piece: Piece): Omit<Assignment, "order"> {
  const { act, exposed, dirt } = piece.job.tasks[piece.task] as Task;
  const day = problem.days[piece.day] as Day;
  const person = problem.hands[piece.person]?.person.code ?? "";
  const minutes = Math.round(piece.minutes * 10) / 10;
  const station = piece.station || (act === "admit" || act === "release" ? "Ward" : "");
  return {
    day,
    person,
    station,
    item: piece.job.item.id,
    act,
    minutes,
    exposed,
    dirt,
    wipeAfter: dirt >= WIPE_FROM,
  };
}

function groupedBy<T>(rows: readonly T[], key: (row: T) => number): T[][] {
  const groups = new Map<number, T[]>();
  for (const row of rows) {
    const group = groups.get(key(row));
    if (group) group.push(row);
    else groups.set(key(row), [row]);
  }
  return [...groups.values()];
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
