import { clockBack } from "./clock-back.ts";
import { cutDatabase } from "./cut-database.ts";
import { droppingLink } from "./dropping-link.ts";
import { fullDisk } from "./full-disk.ts";
import { killDatabase, killOverDatabase } from "./kill-database.ts";
import { killServer } from "./kill-server.ts";
import { killTablet } from "./kill-tablet.ts";
import { readOnlyFolder } from "./read-only.ts";
import { sameItem } from "./same-item.ts";
import type { Size, Trial } from "./trial.ts";

export const FULL: Size = {
  serverKills: 1000,
  tabletKills: 1000,
  overDatabase: 1000,
  databaseKills: 200,
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

export const TRIALS: readonly Trial[] = [
  killServer,
  killTablet,
  killOverDatabase,
  killDatabase,
  fullDisk,
  readOnlyFolder,
  clockBack,
  cutDatabase,
  sameItem,
  droppingLink,
];
