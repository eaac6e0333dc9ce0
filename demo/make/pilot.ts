import type { Draft } from "./draft.ts";
import type { SessionRow } from "./rows.ts";
import { type Chance, entryAt } from "./seeded.ts";

/** How a lot went in the trial: its acts, and minutes an item and a leaf. */
export interface Trial {
  readonly items: readonly Draft[];
  /** Act → minutes an item and minutes a leaf, as the team worked them. */
  readonly acts: Readonly<Record<string, readonly [item: number, leaf: number]>>;
}

export interface TrialTeam {
  /** Act → who does it. */
  readonly people: Readonly<Record<string, readonly string[]>>;
  readonly days: readonly string[];
}

const NEAR_GROWTH = new Set(["admit", "release", "covers", "clean"]);
/** Days an item rests between two acts: short ones at the bench, long ones in the Ward. */
const REST: Readonly<Record<string, readonly [number, number]>> = { release: [6, 14] };

/** The rows of a trial: items spread over its days, the acts of one item in their order. */
export function trialSessions(chance: Chance, trials: readonly Trial[], team: TrialTeam): SessionRow[] {
  const rows = trials.flatMap((trial) => {
    const room = Math.max(0, team.days.length - 30);
    return trial.items.flatMap((draft, at) =>
      sessionsOf(
        chance,
        draft,
        trial,
        team,
        Math.floor((at * room) / trial.items.length) + chance.whole(0, 5),
      ),
    );
  });
  return rows
    .map((row, at) => ({ row, at }))
    .sort((a, b) => (a.row.date < b.row.date ? -1 : a.row.date > b.row.date ? 1 : a.at - b.at))
    .map(({ row }) => row);
}

function sessionsOf(
  chance: Chance,
  draft: Draft,
  trial: Trial,
  team: TrialTeam,
  start: number,
): SessionRow[] {
  const grown = draft.answers.growth_visible === "yes" || draft.answers.growth_visible === "unsure";
  let at = start;
  return Object.entries(trial.acts).map(([act, [item, leaf]]) => {
    const [least, most] = REST[act] ?? [0, 2];
    at = Math.min(team.days.length - 1, at + chance.whole(least, most));
    const typical = item + leaf * (draft.row.leaves ?? 1);
    return {
      date: entryAt(team.days, at),
      item: draft.row.item,
      act,
      person: chance.pick(team.people[act] ?? []),
      minutes: Math.max(1, Math.round(chance.skewed(0.65, 0.95, 1.75) * typical)),
      exposed: grown && NEAR_GROWTH.has(act) ? "yes" : "no",
    };
  });
}

/** No growth, no doubt about growth, no water. */
export const isDry = ({ answers }: Draft): boolean =>
  answers.growth_visible === "no" &&
  answers.wet === "no" &&
  answers.damp_to_touch === "no" &&
  answers.musty_odour !== "yes";

/** Dry, and nothing on it stops the team. */
export const isSound = (draft: Draft): boolean =>
  isDry(draft) &&
  draft.parts.length === 0 &&
  ["powder_between", "rodent_signs", "guano", "live_insects"].every((test) => draft.answers[test] === "no") &&
  draft.answers.bright_green !== "yes" &&
  draft.row.format !== "other";
