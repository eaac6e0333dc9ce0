import type { Day } from "../../src/core/units/day.ts";
import { verifyDatabase } from "../../src/edge/keep/verify.ts";
import { killing, sayKills } from "./kill-server.ts";
import { type Postgres, startPostgres } from "./postgres.ts";
import { type Running, startServer } from "./process.ts";
import { type Shown, skipped, type Trial } from "./trial.ts";

const TODAY = "2026-06-19" as Day;

export const killOverDatabase: Trial = {
  name: "server killed while it writes, PostgreSQL",
  run: ({ folder, size, seed }) =>
    onPostgres(folder, (postgres) =>
      shown({ folder, postgres, kills: size.overDatabase, seed, kill: (server) => server.kill() }),
    ),
};

export const killDatabase: Trial = {
  name: "PostgreSQL itself killed while the server writes",
  run: ({ folder, size, seed }) =>
    onPostgres(folder, (postgres) =>
      shown({
        folder,
        postgres,
        kills: size.databaseKills,
        seed,
        kill: async (server) => {
          postgres.kill();
          await postgres.startAgain(); // meanwhile the server refuses, and the tablets stop
          await server.kill();
        },
      }),
    ),
};

async function onPostgres(folder: string, work: (postgres: Postgres) => Promise<Shown>): Promise<Shown> {
  const postgres = await startPostgres(folder);
  if (typeof postgres === "string") return skipped(`PostgreSQL does not start here (${postgres})`);
  try {
    return await work(postgres);
  } finally {
    await postgres.stop();
  }
}

interface Wish {
  readonly folder: string;
  readonly postgres: Postgres;
  readonly kills: number;
  readonly seed: number;
  kill(server: Running): Promise<void>;
}

async function shown({ folder, postgres: { url }, kills, seed, kill }: Wish): Promise<Shown> {
  const { account, cut } = await killing({
    folder,
    start: () => startServer(folder, url),
    kill,
    kills,
    seed,
  });
  const read = await verifyDatabase(url, TODAY);
  const problems = read.ok ? read.value.problems : read.problems;
  return {
    line: `${sayKills(kills, account, cut)}, ${problems.length} faults in the database`,
    faults: [
      ...account.faults,
      ...account.lost(),
      ...problems.map(({ code, got }) => `${code} ${got ?? ""}`),
    ],
  };
}
