import type { Plan } from "../../core/plan/plan.ts";
import { sayAirVerdict } from "../../core/say/damp/air.ts";
import { sayFinish, sayRisk } from "../../core/say/risk.ts";
import { addDays, type Day, mondayOf } from "../../core/units/day.ts";
import type { StoreWatch } from "../../core/ward/store-watch.ts";

/** The answer in a dozen lines, for a tired lead at six in the morning. */
export function answerLines(
  plan: Plan,
  stores: readonly StoreWatch[] = [],
  mould: readonly string[] = [],
): string[] {
  const { proof } = plan;
  const firstDay = earliest(plan.assignments.map((each) => each.day));
  const aside = plan.left.filter((each) => each.kind === "set aside").length;
  const door = plan.left.filter((each) => each.kind === "at the Door").length;
  const late = plan.left.filter((each) => each.kind === "no time");
  return [
    `${plan.campaign}, ${plan.place}: plan made for the morning of ${say(plan.planFrom)}; the campaign ends on ${say(plan.end)}.`,
    `Finish      ${sayFinish(plan, say)}`,
    `Spread      ${sayRisk(plan)}.`,
    `Binds       ${plan.binds[0] ? `${plan.binds[0].sentence}` : "Nothing: every shared resource has room."}`,
    `Does not fit ${late.length === 0 ? "nothing" : `${count(late.length, "item")} (${late.filter((each) => each.must).length} must-do): ${names(late.map((each) => each.item))}`}`,
    `Waits       ${count(aside, "item")} set aside by a rule until someone outside the team answers; ${door} at the Door with a must-ask test unanswered.`,
    `Near mould  ${nearMouldWords(plan)}`,
    `Orders      ${ordersWords(plan)}`,
    ...dampLines(stores, mould),
    `First day   ${firstDay ? firstDayWords(plan, firstDay) : "no work planned"}`,
    `Proof       the programme's plan is at most ${(proof.gap * 100).toFixed(2)} % from the best possible; the day-by-day plan is within ${(proof.itemGap * 100).toFixed(1)} % of the same bound.`,
  ];
}

/** The store where mould can most be growing, and how many others; a quiet reader is counted, for it clears nothing; then what is to come. */
function dampLines(stores: readonly StoreWatch[], mould: readonly string[]): string[] {
  const [worst, ...others] = stores;
  if (!worst) return [];
  const alarmed = others.filter(({ watch }) => watch.stateNow === "act" || watch.stateNow === "watch").length;
  const rest =
    others.length === 0
      ? ""
      : alarmed > 0
        ? ` ${count(alarmed, "other reader")} too: npx leafward air says which.`
        : ` ${count(others.length, "other reader")}: no lamp lit at the end, which is no all-clear.`;
  return [`Damp        ${[`${sayAirVerdict(worst.name, worst.watch)}${rest}`, ...mould].join(" ")}`];
}

const earliest = (days: readonly Day[]): Day | null => [...days].sort()[0] ?? null;

function say(day: Day): string {
  return new Intl.DateTimeFormat("en-GB", {
    weekday: "short",
    day: "numeric",
    month: "long",
    year: "numeric",
    timeZone: "UTC",
  }).format(new Date(`${day}T00:00:00Z`));
}

const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? "" : "s"}`;
const names = (list: readonly string[]): string =>
  list.length > 6 ? `${list.slice(0, 6).join(", ")} … (see left.csv)` : list.join(", ");

/** People on exposed work in the week of the plan's first day. */
function nearMouldWords(plan: Plan): string {
  const monday = mondayOf(plan.planFrom);
  const sunday = addDays(monday, 6);
  const minutes = new Map<string, number>();
  for (const each of plan.personDays)
    if (each.exposedMinutes > 0 && each.day >= monday && each.day <= sunday)
      minutes.set(each.person, (minutes.get(each.person) ?? 0) + each.exposedMinutes);
  const words = [...minutes].map(([code, sum]) => {
    const person = plan.people.find((each) => each.code === code);
    const limit = person?.mouldLimit ? person.mouldLimit.minutesADay * person.mouldLimit.daysAWeek : 0;
    return `${person?.name ?? code} ${sum} of ${limit} min`;
  });
  return words.length > 0 ? `this week: ${words.join("; ")}.` : "nobody this week.";
}

function ordersWords(plan: Plan): string {
  const soon = plan.orders.filter((order) => order.orderBy <= addDays(plan.planFrom, 14));
  const late = soon.filter((order) => order.late).length;
  if (plan.orders.length === 0) return "none: what is here and on its way lasts.";
  const first = soon
    .slice(0, 4)
    .map((order) => `${order.name} (${count(order.packs, "pack")} by ${order.orderBy})`);
  return soon.length === 0
    ? `none due in the next fortnight; ${plan.orders.length} later.`
    : `${soon.length} due in the next fortnight${late ? `, ${late} already late` : ""}: ${first.join(", ")}${soon.length > 4 ? " …" : "."}`;
}

function firstDayWords(plan: Plan, day: Day): string {
  const pieces = plan.assignments.filter((each) => each.day === day);
  const people = new Set(pieces.map((each) => each.person));
  const items = new Set(pieces.map((each) => each.item));
  return `${say(day)}: ${count(people.size, "day sheet")}, ${count(items.size, "item")}, ${Math.round(pieces.reduce((sum, each) => sum + each.minutes, 0) / 60)} hours of work.`;
}
