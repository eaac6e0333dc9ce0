import { setTimeout as sleep } from "node:timers/promises";
import PgBoss from "pg-boss";
import type { Day } from "../../core/units/day.ts";

const NAME = "leafward-plan";
const LOOK_EVERY_MS = 2000;
/** A plan takes a minute or two; a worker that is silent for longer is taken for dead, and its job goes to another. */
const PATIENCE_MINUTES = 20;
const TRIED_AGAIN = 2;

/** A campaign to plan, and the morning to plan it for. */
export interface PlanJob {
  readonly campaign: string;
  readonly today: Day;
}

/** Work that waits in the programme's database for whichever worker is free, on whatever machine. */
export interface Queue {
  /** @returns how many were put in; a campaign that waits already is not put in twice */
  ask(jobs: readonly PlanJob[]): Promise<number>;
  /** Does one job after the other; one that fails is told of, and tried again.   @param untilEmpty ends when nothing waits */
  work(
    doing: (job: PlanJob) => Promise<void>,
    failed: (job: PlanJob, error: unknown) => void,
    wish: { readonly untilEmpty: boolean; readonly signal: AbortSignal },
  ): Promise<void>;
  close(): Promise<void>;
}

export async function openQueue(url: string): Promise<Queue> {
  const boss = new PgBoss({ connectionString: url, schema: "leafward_queue", schedule: false, max: 2 });
  boss.on("error", () => {}); // a line that breaks is opened anew; what was asked for fails by itself
  await boss.start();
  await boss.createQueue(NAME, {
    name: NAME,
    policy: "short", // one waiting job for each key
    retryLimit: TRIED_AGAIN,
    expireInMinutes: PATIENCE_MINUTES,
  });
  return {
    ask: async (jobs) => {
      let asked = 0;
      for (const job of jobs)
        if ((await boss.send(NAME, { ...job }, { singletonKey: job.campaign })) !== null) asked++;
      return asked;
    },
    work: async (doing, failed, { untilEmpty, signal }) => {
      while (!signal.aborted) {
        const [job] = await boss.fetch<PlanJob>(NAME);
        if (job === undefined) {
          if (untilEmpty) return;
          await sleep(LOOK_EVERY_MS, undefined, { signal }).catch(() => {});
          continue;
        }
        try {
          await doing(job.data);
          await boss.complete(NAME, job.id);
        } catch (error) {
          failed(job.data, error);
          await boss.fail(NAME, job.id, { why: error instanceof Error ? error.message : `${error}` });
        }
      }
    },
    close: () => boss.stop({ graceful: false, wait: true }),
  };
}
