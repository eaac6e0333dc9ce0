import { planCampaign } from "../../edge/programme/plan-campaign.ts";
import { openQueue } from "../../edge/programme/queue.ts";
import { askedOf } from "./own-options.ts";
import { withProgramme } from "./programme.ts";

type Out = (line: string) => void;

const HELP = `leafward work: makes the plans a programme asked for

  npx leafward work

Takes one campaign after the other from the PostgreSQL of LEAFWARD_DATABASE_URL, plans it as its log
tells it, and writes the forecast where npx leafward programme shows it. It may run on as many machines
as there are; no campaign is planned by two. A worker that dies leaves its campaign to another. Ctrl+C
ends it after the plan in hand. Plans are made by the published rules: a campaign's own rules.json lies in
its folder, and is not asked here.

  --once   end when nothing waits`;

/** @returns 0 ended as asked · 1 so it did, but some plan could not be made · 2 the database cannot be used */
export async function workQueue(args: string[], out: Out, complain: Out): Promise<number> {
  const asked = askedOf(args, { help: HELP, least: 0, most: 0, flags: ["once"] }, out, complain);
  if ("exit" in asked) return asked.exit;
  return withProgramme(complain, async (programme, url) => {
    const stop = new AbortController();
    process.once("SIGINT", () => stop.abort()).once("SIGTERM", () => stop.abort());
    let failures = 0;
    const queue = await openQueue(url);
    await queue.work(
      async (job) => {
        const began = performance.now();
        const made = await planCampaign(programme, job);
        const seconds = ((performance.now() - began) / 1000).toFixed(0);
        out(
          `${job.campaign}: ${made ? `planned for ${job.today}` : "its entries do not tell a campaign yet"} (${seconds} s)`,
        );
      },
      (job, error) => {
        failures++;
        complain(
          `${job.campaign}: no plan was made, it is tried again. ${error instanceof Error ? error.message : error}`,
        );
      },
      { untilEmpty: asked.has("once"), signal: stop.signal },
    );
    await queue.close();
    return failures > 0 ? 1 : 0;
  });
}
