import { disagreementsOf } from "../../core/log/campaign-of.ts";
import { type CampaignState, eventsAbout, namesOn } from "../../core/log/state.ts";
import type { Finish, Plan } from "../../core/plan/plan.ts";
import { addDays, type Day, mondayOf } from "../../core/units/day.ts";

/** What a programme shows of one campaign: from its log, and from its last plan. Of people it tells sums alone. */
export interface CampaignSummary {
  readonly name: string;
  readonly place: string;
  readonly planFrom: Day;
  readonly end: Day;
  readonly finish: Finish;
  /** Items that have a way to the camera. */
  readonly routed: number;
  readonly nearMould: {
    /** Minutes of all people in the week of the plan's first day, and what their limits allow. */
    readonly planned: number;
    readonly allowed: number;
  };
  /** Stores that run out before the end with nothing more ordered, the first first. */
  readonly runOut: readonly { readonly name: string; readonly day: Day }[];
  /** Orders that come too late even when sent today. */
  readonly lateOrders: number;
  /** Questions to the adviser nobody has answered, by their short names. */
  readonly questions: readonly string[];
  /** Items set aside by a rule until somebody outside the team answers. */
  readonly setAside: number;
  readonly disagreements: number;
}

export function summaryOf(plan: Plan, state: CampaignState): CampaignSummary {
  return {
    name: plan.campaign,
    place: plan.place,
    planFrom: plan.planFrom,
    end: plan.end,
    finish: plan.finish,
    routed: plan.routed,
    nearMould: nearMould(plan),
    runOut: plan.stores
      .flatMap(({ name, runsOut }) =>
        runsOut !== null && runsOut <= plan.end ? [{ name, day: runsOut }] : [],
      )
      .sort((a, b) => (a.day + a.name < b.day + b.name ? -1 : 1)),
    lateOrders: plan.orders.filter(({ late }) => late).length,
    questions: waitingQuestions(state),
    setAside: plan.left.filter(({ kind }) => kind === "set aside").length,
    disagreements: disagreementsOf(state).length,
  };
}

function nearMould({ planFrom, personDays, people }: Plan): CampaignSummary["nearMould"] {
  const monday = mondayOf(planFrom);
  const sunday = addDays(monday, 6);
  const sum = (minutes: readonly number[]): number => minutes.reduce((a, b) => a + b, 0);
  return {
    planned: sum(
      personDays.flatMap(({ day, exposedMinutes }) =>
        monday <= day && day <= sunday ? [exposedMinutes] : [],
      ),
    ),
    allowed: sum(
      people.flatMap(({ mouldLimit }) => (mouldLimit ? [mouldLimit.minutesADay * mouldLimit.daysAWeek] : [])),
    ),
  };
}

const waitingQuestions = (state: CampaignState): string[] =>
  namesOn(state, "question").filter((name) => {
    const kinds = eventsAbout(state, `question:${name}`).map(({ kind }) => kind);
    return kinds.includes("questionAsked") && !kinds.includes("questionAnswered");
  });
