import type { Campaign } from "../../core/items/campaign.ts";
import { campaignOf, disagreementsOf } from "../../core/log/campaign-of.ts";
import type { LogEvent } from "../../core/log/event.ts";
import type { Disagreement } from "../../core/log/findings-now.ts";
import { fold } from "../../core/log/fold.ts";
import { type Outcome, type Problem, refused } from "../../core/outcome/problem.ts";
import type { Day } from "../../core/units/day.ts";
import { type CampaignRead, readCampaignFolder } from "../intake/read-campaign.ts";
import { allEvents, type Keep, KeepFault } from "./keep.ts";
import { databaseUrl, mayHaveLog, openKeep } from "./open-keep.ts";
import { sheetChanges } from "./sheet-changes.ts";

export interface CampaignOpened extends CampaignRead {
  /** The log it was told by; null: the sheets alone. */
  readonly log: {
    readonly where: string;
    readonly entries: number;
    /** Answers that contradict and wait to be settled. */
    readonly disagreements: readonly Disagreement[];
  } | null;
}

/**
 * The campaign of a folder on one morning: as its log tells it where there is one, else as its sheets do.
 * A log that cannot be read is never passed over: the sheets may not know what was found since.
 * @param today absent: `planFrom` of campaign.json, else the campaign's first day
 */
export async function openCampaign(folder: string, today?: Day): Promise<CampaignOpened> {
  const sheets = await readCampaignFolder(folder);
  const asWritten = sheets.campaign && today ? { ...sheets.campaign, planFrom: today } : sheets.campaign;
  const alone = { ...sheets, campaign: asWritten, log: null };
  if (!mayHaveLog(folder)) return alone;
  const log = await readLog(folder, sheets.campaign);
  if (!log.ok)
    return { ...sheets, campaign: null, problems: [...log.problems, ...sheets.problems], log: null };
  const { events, where } = log.value;
  const state = fold(events);
  const morning = today ?? sheets.campaign?.planFrom;
  const told = campaignOf(state, morning ?? SOME_DAY);
  if (told === null) return alone;
  const campaign = morning ? told : campaignOf(state, told.start);
  return {
    campaign,
    counts: sheets.counts,
    problems: sheets.campaign
      ? [...sheets.problems, ...differences(events, sheets.campaign)]
      : sheets.problems.filter(({ code }) => code !== "no-campaign-file"),
    log: { where, entries: events.length, disagreements: disagreementsOf(state) },
  };
}

/** Asked of the log only to learn the campaign's first day. */
const SOME_DAY = "2000-01-01" as Day;

async function readLog(
  folder: string,
  sheets: Campaign | null,
): Promise<Outcome<{ readonly events: readonly LogEvent[]; readonly where: string }>> {
  const opened = await openKeep(folder, "read");
  if (!opened.ok) return opened;
  const keep = opened.value;
  try {
    const campaign = await campaignHere(keep, sheets);
    return {
      ok: true,
      value: { events: campaign === null ? [] : await eventsIn(keep, campaign), where: keep.where },
    };
  } catch (error) {
    if (error instanceof KeepFault) return refused(error.problem);
    throw error;
  } finally {
    await keep.close();
  }
}

/** The name of this folder's campaign in its keep, which is the name it was founded under; null: it is not there.
 *  A database holds many campaigns; a file is the campaign's own. */
export async function campaignHere(
  keep: Keep,
  sheets: Pick<Campaign, "name"> | null,
): Promise<string | null> {
  const names = await keep.campaigns();
  const found = names.find((name) => name === (sheets && codeOf(sheets)));
  return (
    found ??
    ((databaseUrl() === undefined || sheets === null) && names.length === 1 ? (names[0] ?? null) : null)
  );
}

/** Its first 80 letters, the last of them whole. */
export const codeOf = ({ name }: Pick<Campaign, "name">): string =>
  name.slice(0, 80).replace(/\p{Surrogate}$/u, "");

export async function eventsIn(keep: Keep, campaign: string): Promise<LogEvent[]> {
  const events: LogEvent[] = [];
  for await (const { event } of allEvents(keep, campaign)) events.push(event);
  return events;
}

function differences(events: readonly LogEvent[], sheets: Campaign): Problem[] {
  const { fresh, gone } = sheetChanges(events, sheets);
  if (fresh + gone === 0) return [];
  return [
    {
      code: "sheets-differ",
      severity: "note",
      got: [fresh > 0 ? `${fresh} new` : "", gone > 0 ? `${gone} gone` : ""]
        .filter((each) => each !== "")
        .join(", "),
      remedy: "The log is what counts. To take the sheets in: npx leafward keep <folder>.",
    },
  ];
}
