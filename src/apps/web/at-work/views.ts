import type { Act, Limits } from "../../../core/items/campaign.ts";
import { minutesNearMould } from "../../../core/log/minutes-near-mould.ts";
import { type MouldAccount, mayWorkNearMould, mouldAccount } from "../../../core/log/mould-account.ts";
import { type RecentItems, recentItems } from "../../../core/log/recent-items.ts";
import { type Begun, begunBy, runningWork, satAt } from "../../../core/log/running-work.ts";
import type { Day } from "../../../core/units/day.ts";
import type { Now } from "../log/now.ts";

/** Work that somebody is in the middle of. */
export interface RunningShown {
  /** Empty: none was taken in hand for it. */
  readonly item: string;
  readonly act: Act;
  readonly day: Day;
  /** Minutes after midnight. */
  readonly minute: number;
  /** Minutes until now; of another day nobody knows: 0. */
  readonly minutes: number;
  readonly isOld: boolean;
  readonly exposed: boolean;
  /** Minutes of earlier sittings at the same act, today. */
  readonly satBefore: number;
}

/** An account with the limits it is held against. */
export interface AccountShown extends MouldAccount {
  readonly limits: Readonly<Record<keyof Limits, number>>;
  readonly sources: readonly string[];
}

/** Somebody at work: what runs, and how they stand to the limits. */
export interface AtWork {
  readonly person: string;
  /** Null: clean work this week, whatever the cause, and nothing more is shown. */
  readonly account: AccountShown | null;
  readonly running: RunningShown | null;
}

/** How somebody stands now; null: nobody is chosen. */
const atWorkView = (now: Now, person: string | null): AtWork | null => {
  if (person === null) return null;
  const begun = begunBy(now.state, person, recentOf(now));
  const running = runningWork(begun);
  const shown = running === null ? null : runningShown(now, running, begun);
  return { person, account: accountOf(now, person, shown), running: shown };
};

function runningShown({ today, minute }: Now, running: Begun, begun: readonly Begun[]): RunningShown | null {
  const [act] = running.acts;
  if (act === undefined) return null;
  const isOld = running.day !== today;
  const { item, day, exposed } = running;
  return {
    ...{ item: item ?? "", act, day, exposed, isOld, minute: running.minute },
    minutes: isOld ? 0 : Math.max(0, minute - running.minute),
    satBefore: item === null ? 0 : satAt(begun, item, act, day),
  };
}

function accountOf(now: Now, person: string, running: RunningShown | null): AccountShown | null {
  const { house, state, today, minute } = now;
  const { limits, people, calendar, stations } = house;
  const account = mouldAccount({
    ...{ limits, minute, day: today },
    near: minutesNearMould(state, stations, recentOf(now)).get(person),
    runsSince: running?.exposed && !running.isOld ? running.minute : null,
    mayMould: mayWorkNearMould(
      people.find(({ code }) => code === person),
      calendar,
      today,
    ),
  });
  if (account.stop === "clean work" || account.stop === "week") return null;
  const all = Object.entries(limits) as [keyof Limits, Limits[keyof Limits]][]; // its own names
  return {
    ...account,
    limits: Object.fromEntries(all.map(([name, { value }]) => [name, value])) as AccountShown["limits"],
    sources: [...new Set(all.map(([, { source }]) => source))],
  };
}

const recent = new WeakMap<Now, RecentItems>();
const DAYS_ASKED = 15;

/** Items written about in the last two weeks: as far back as the limits look. Of a pretended day the clock says nothing, and all are taken. */
export function recentOf(now: Now): RecentItems {
  const since = now.me.pretendDay === null ? Date.parse(now.today) - DAYS_ASKED * 86_400_000 : 0;
  const found = recent.get(now) ?? recentItems(now.state, since);
  recent.set(now, found);
  return found;
}

export const atWorkViews = { atWork: atWorkView } as const;
