import { sayProblem } from "../../core/say/problems.ts";
import { KeepFault } from "../../edge/keep/keep.ts";
import { programmeUrl } from "../../edge/programme/needs-database.ts";
import { openProgramme, type Programme } from "../../edge/programme/programme.ts";
import { openQueue } from "../../edge/programme/queue.ts";
import { machineNow } from "./now.ts";
import { askedOf } from "./own-options.ts";
import { byRisk, campaignLines } from "./programme-lines.ts";

type Out = (line: string) => void;

const HELP = `leafward programme: every campaign in one database, those most at risk first

  npx leafward programme

Finish and its risk, minutes near mould this week, what runs out, what waits for the adviser, and the
last entry of each campaign in the PostgreSQL of LEAFWARD_DATABASE_URL. Forecasts are from the last
plan; campaigns with newer entries say so.

  --plan   ask for a plan of every campaign with newer entries, or with a plan of an earlier day;
           npx leafward work makes them, here or on other machines
  --all    every campaign, not the first twenty
  --json   the same as data`;

const SHOWN = 20;

/** @returns 0 listed · 2 the database cannot be used */
export async function programmeList(args: string[], out: Out, complain: Out): Promise<number> {
  const flags = ["plan", "all", "json"] as const;
  const asked = askedOf(args, { help: HELP, least: 0, most: 0, flags }, out, complain);
  if ("exit" in asked) return asked.exit;
  return withProgramme(complain, async (programme, url) => {
    const rows = [...(await programme.campaigns())].sort(byRisk);
    if (asked.has("json")) out(JSON.stringify(rows));
    else {
      const shown = asked.has("all") ? rows : rows.slice(0, SHOWN);
      for (const line of shown.flatMap(campaignLines)) out(line);
      if (shown.length < rows.length) out(`… and ${rows.length - shown.length} more: --all`);
      if (rows.length === 0)
        out("No campaign is in this database yet: npx leafward keep <folder> puts one there.");
    }
    if (!asked.has("plan")) return 0;
    const { today } = machineNow();
    const stale = rows.filter(({ summary, behind }) => behind || summary?.planFrom !== today);
    const queue = await openQueue(url);
    const count = await queue.ask(stale.map(({ campaign }) => ({ campaign, today })));
    await queue.close();
    complain(
      `${count} to plan${count < stale.length ? `, ${stale.length - count} waited already` : ""}: npx leafward work`,
    );
    return 0;
  });
}

/** Opens the programme's database for some work; when it cannot be used that was said. */
export async function withProgramme(
  complain: Out,
  work: (programme: Programme, url: string) => Promise<number>,
): Promise<number> {
  const url = programmeUrl();
  const opened = url.ok ? await openProgramme(url.value) : url;
  if (!url.ok || !opened.ok) {
    for (const problem of opened.ok ? [] : opened.problems) complain(sayProblem(problem));
    return 2;
  }
  try {
    return await work(opened.value, url.value);
  } catch (error) {
    if (!(error instanceof KeepFault)) throw error;
    complain(sayProblem(error.problem));
    return 2;
  } finally {
    await opened.value.close();
  }
}
