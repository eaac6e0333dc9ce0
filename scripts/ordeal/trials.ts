import { killDatabase, killOverDatabase } from "./kill-database.ts";
import { killServer } from "./kill-server.ts";
import { killTablet } from "./kill-tablet.ts";
import type { Size, Trial } from "./trial.ts";

export const FULL: Size = {
  serverKills: 1000,
  tabletKills: 1000,
  overDatabase: 200,
  databaseKills: 50,
  outbox: 10_000,
  linkDropsMs: 2000,
};

export const SHORT: Size = {
  serverKills: 4,
  tabletKills: 3,
  overDatabase: 2,
  databaseKills: 2,
  outbox: 1000,
  linkDropsMs: 250,
};

export const TRIALS: readonly Trial[] = [killServer, killTablet, killOverDatabase, killDatabase];
