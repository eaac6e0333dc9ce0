import type { Campaign } from "../../../src/core/items/campaign.ts";
import type { Plan } from "../../../src/core/plan/plan.ts";

/**
 * Names every limit a plan breaks. It shares no code with the planner: it reads the plan as printed and the campaign as given,
 * and counts with dates of its own.
 */
export function brokenLimits(campaign: Campaign, plan: Plan): string[] {
  return [
    ...peopleLimits(campaign, plan),
    ...stationLimits(campaign, plan),
    ...orderOfActs(campaign, plan),
    ...wardLimit(campaign, plan),
  ];
}

const dayOfWeek = (day: string): number => (new Date(`${day}T12:00:00Z`).getUTCDay() + 6) % 7;
const within = (row: { from: string; to: string }, day: string): boolean => row.from <= day && day <= row.to;
const plusDays = (day: string, n: number): string =>
  new Date(Date.parse(`${day}T12:00:00Z`) + n * 86_400_000).toISOString().slice(0, 10);

function peopleLimits(campaign: Campaign, plan: Plan): string[] {
  const broken: string[] = [];
  const near = new Map<string, Map<string, number>>();
  const worked = new Map<string, number>();
  for (const each of plan.assignments) {
    const person = campaign.people.find((one) => one.code === each.person);
    if (!person) broken.push(`${each.person} is not in the team`);
    else {
      if (!person.weekdays.includes(dayOfWeek(each.day)))
        broken.push(`${each.person} works on a free weekday, ${each.day}`);
      const rows = campaign.calendar.filter(
        (row) => (row.who === each.person || row.who === "everyone") && within(row, each.day),
      );
      if (rows.some((row) => row.what === "away" || row.what === "closed"))
        broken.push(`${each.person} works while away, ${each.day}`);
      if (each.exposed && (!person.mouldWork || rows.some((row) => row.what === "clean work")))
        broken.push(`${each.person} is near mould on clean work, ${each.day}`);
    }
    worked.set(`${each.person}|${each.day}`, (worked.get(`${each.person}|${each.day}`) ?? 0) + each.minutes);
  }
  for (const each of plan.personDays) {
    if (each.exposedMinutes > campaign.limits.exposedMinutesADay.value + 1)
      broken.push(`${each.person} has ${each.exposedMinutes} mould minutes on ${each.day}`);
    if ((worked.get(`${each.person}|${each.day}`) ?? 0) + each.overheadMinutes > each.presentMinutes + 2)
      broken.push(`${each.person} is over the day's hours on ${each.day}`);
    if (each.exposedMinutes === 0) continue;
    const days = near.get(each.person) ?? new Map<string, number>();
    days.set(each.day, each.exposedMinutes);
    near.set(each.person, days);
  }
  for (const [person, days] of near) {
    for (const day of days.keys()) {
      const monday = plusDays(day, -dayOfWeek(day));
      const week = [0, 1, 2, 3, 4, 5, 6].filter((n) => days.has(plusDays(monday, n))).length;
      if (week > campaign.limits.exposedDaysAWeek.value)
        broken.push(`${person} has ${week} mould days in the week of ${monday}`);
      const row = Array.from({ length: campaign.limits.exposedDaysInARow.value + 1 }, (_, n) =>
        plusDays(day, n),
      );
      if (row.every((each) => days.has(each)))
        broken.push(`${person} has ${row.length} mould days in a row from ${day}`);
    }
  }
  return broken;
}

function stationLimits(campaign: Campaign, plan: Plan): string[] {
  const used = new Map<string, number>();
  for (const each of plan.assignments) {
    const kind = campaign.stations.find((station) => station.id === each.station)?.kind;
    if (kind) used.set(`${kind}|${each.day}`, (used.get(`${kind}|${each.day}`) ?? 0) + each.minutes);
  }
  return [...used].flatMap(([key, minutes]) => {
    const [kind, day] = key.split("|") as [string, string];
    const there = campaign.stations
      .filter((station) => station.kind === kind && isOpen(campaign, station.id, day))
      .reduce((sum, station) => sum + station.places * station.minutesADay, 0);
    return minutes > there + 2 ? [`${kind} is used ${Math.round(minutes)} of ${there} min on ${day}`] : [];
  });
}

function isOpen(campaign: Campaign, id: string, day: string): boolean {
  const rows = campaign.calendar.filter((row) => row.who === id);
  const opens = rows.filter((row) => row.what === "open");
  return (
    (opens.length === 0 || opens.some((row) => within(row, day))) &&
    !rows.some((row) => row.what !== "open" && within(row, day))
  );
}

/** Covers before wrapper before cleaning before camera before box; nothing before arrival; nothing at Bench or Camera before release. */
function orderOfActs(campaign: Campaign, plan: Plan): string[] {
  const order = ["admit", "release", "covers", "wrap", "clean", "image", "box"] as const;
  const arrives = new Map(campaign.items.map((item) => [item.id, item.arrives]));
  const broken: string[] = [];
  for (const { item, days } of plan.itemDays) {
    const passed = order.flatMap((act) => (days[act] ? [{ act, day: days[act] as string }] : []));
    passed.forEach((each, at) => {
      const before = passed[at - 1];
      if (before && (each.day < before.day || (each.day === before.day && each.act !== "box")))
        broken.push(`${item}: ${each.act} on ${each.day}, ${before.act} on ${before.day}`);
    });
    const arrival = arrives.get(item);
    if (arrival && passed[0] && passed[0].day <= arrival)
      broken.push(`${item} is worked on before it has arrived`);
    if (days.release && days.admit && days.release < plusDays(days.admit, 2))
      broken.push(`${item} is released without two readings a day apart`);
  }
  return broken;
}

function wardLimit(campaign: Campaign, plan: Plan): string[] {
  const litres = new Map<string, number>();
  const size = (id: string): number => {
    const item = campaign.items.find((each) => each.id === id);
    return Math.min(
      200,
      (2.5 * (item?.heightMm ?? 330) * (item?.widthMm ?? 240) * Math.max(5, item?.thicknessMm ?? 40)) / 1e6,
    );
  };
  for (const { item, days } of plan.itemDays) {
    if (!days.admit) continue;
    const out = days.release ?? campaign.end;
    for (let day: string = days.admit; day < out; day = plusDays(day, 1))
      litres.set(day, (litres.get(day) ?? 0) + size(item));
  }
  return [...litres].flatMap(([day, used]) =>
    used > campaign.wardLitres + 0.5
      ? [`the Ward holds ${Math.round(used)} of ${campaign.wardLitres} litres on ${day}`]
      : [],
  );
}
