import type { Guide, Manner } from "../guide.ts";
import type { Job, PlanProblem } from "../problem.ts";
import { type Walk, walk } from "../walk.ts";
import { costOf } from "./plan-cost.ts";

/** A walked plan, what it costs and what it followed. */
export interface Trial {
  /** The problem it was walked in: as it is, or with days near mould left out. */
  readonly problem: PlanProblem;
  readonly guide: Guide;
  readonly day: Walk;
  readonly cost: number;
}

export function tryOut(problem: PlanProblem, guide: Guide): Trial {
  const day = walk(problem, guide);
  return { problem, guide, day, cost: costOf(problem, day) };
}

/** A manner, and how far wanted days lie from the prices' towards the programme's: 0 to 1. */
interface Setting extends Manner {
  readonly blend: number;
}

export const FIRST: Setting = { blend: 0.25, session: 45, patience: 7, sameWorth: 0.2, fitting: 6 };
const CHOICES: { readonly [K in keyof Setting]: readonly number[] } = {
  sameWorth: [1, 0.5, 0.2, 0.05],
  patience: [2, 7, 20],
  session: [1, 45, 80],
  blend: [0, 0.25, 0.5, 1],
  fitting: [1, 6, 12],
};
const SETTINGS = ["sameWorth", "patience", "session", "blend", "fitting"] as const;

/**
 * Walks the plan in different manners, one setting changed at a time, and keeps the best; `sweeps` times through all settings.
 * @param goesOn is told the best so far before each walk; false ends the trials
 */
export function bestManner(
  problem: PlanProblem,
  programme: Guide,
  prices: Guide,
  sweeps: number,
  goesOn: (best: Trial) => boolean = () => true,
): Trial {
  const trial = (setting: Setting): Trial =>
    tryOut(problem, { ...blended(programme, prices, setting.blend), manner: setting });
  const keyOf = (setting: Setting): string => SETTINGS.map((name) => setting[name]).join("|");
  const tried = new Set([keyOf(FIRST)]);
  let setting = FIRST;
  let best = trial(setting);
  for (let sweep = 0; sweep < sweeps; sweep++) {
    const before = best.cost;
    for (const name of SETTINGS)
      for (const value of CHOICES[name]) {
        const other = { ...setting, [name]: value };
        if (tried.has(keyOf(other))) continue;
        if (!goesOn(best)) return best;
        tried.add(keyOf(other));
        const made = trial(other);
        if (made.cost >= best.cost) continue;
        best = made;
        setting = other;
      }
    if (best.cost === before) break;
  }
  return best;
}

/** Wanted days between two guides; exposed days as the programme gives them, in whole days. */
function blended(programme: Guide, prices: Guide, share: number): Guide {
  const wanted = new Map<Job, Float64Array>();
  for (const [job, days] of prices.wanted) {
    const others = programme.wanted.get(job) ?? days;
    wanted.set(
      job,
      days.map((day, s) => (1 - share) * day + share * (others[s] ?? day)),
    );
  }
  return { ...prices, wanted, exposedBy: programme.exposedBy };
}
