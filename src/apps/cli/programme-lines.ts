import { sayDay } from "../../core/say/dates.ts";
import { sayUnfinished } from "../../core/say/risk.ts";
import { type Day, dayFrom } from "../../core/units/day.ts";
import type { CampaignRow } from "../../edge/programme/programme.ts";
import type { CampaignSummary } from "../../edge/programme/summary.ts";

/** The campaigns that are most often not done by their end come first; then those nobody has planned; then by name. */
export const byRisk = (a: CampaignRow, b: CampaignRow): number =>
  risk(b) - risk(a) || (a.campaign < b.campaign ? -1 : 1);

const risk = ({ summary }: CampaignRow): number =>
  summary === null ? 0.5 : summary.finish.draws === 0 ? 0 : summary.finish.unfinished / summary.finish.draws;

/** Two lines for each campaign: what it is and how old the plan, then what to look at. */
export function campaignLines({ campaign, summary, behind, last }: CampaignRow): string[] {
  const entry = `last entry ${said(dayOf(last.at))}`;
  if (summary === null) return [campaign, `  not planned yet · ${entry}`];
  const age = `plan of ${sayDay(summary.planFrom, "en-GB")}${behind ? ", entries came since" : ""}`;
  const facts = [finish(summary), mould(summary), stores(summary), adviser(summary), entry];
  return [`${campaign}, ${summary.place} (${age})`, `  ${facts.filter((words) => words !== "").join(" · ")}`];
}

function finish({ finish, end }: CampaignSummary): string {
  const { p50, p90 } = finish;
  if (p50 === null) return `not done by its end on ${said(end)} ${sayUnfinished(finish)}`;
  return `finish ${said(p50)}, ${p90 ? `9 in 10 by ${said(p90)}` : `but ${sayUnfinished(finish)} not by its end on ${said(end)}`}`;
}

const mould = ({ nearMould: { planned, allowed } }: CampaignSummary): string =>
  allowed === 0 ? "nobody near mould" : `near mould ${planned} of ${allowed} min this week`;

function stores({ runOut, lateOrders }: CampaignSummary): string {
  const [first, ...more] = runOut;
  if (first === undefined) return "stores last";
  const late = lateOrders === 0 ? "" : `, ${count(lateOrders, "order")} too late already`;
  return `${first.name} runs out ${said(first.day)}${more.length > 0 ? `, ${more.length} more after it` : ""}${late}`;
}

function adviser({ questions, setAside, disagreements }: CampaignSummary): string {
  const words = [
    questions.length > 0 ? `${count(questions.length, "question")} to the adviser` : "",
    setAside > 0 ? `${count(setAside, "item")} set aside until someone answers` : "",
    disagreements > 0 ? `${count(disagreements, "disagreement")} to settle` : "",
  ];
  return words.filter((each) => each !== "").join(", ");
}

const dayOf = (ms: number): Day => dayFrom(new Date(ms).toISOString().slice(0, 10)) as Day; // of a date it is one
const said = (day: Day): string => sayDay(day, "en-GB", "tiny");
const count = (n: number, word: string): string =>
  `${n.toLocaleString("en-GB")} ${word}${n === 1 ? "" : "s"}`;
