import { clockBack } from "./clock-back.ts";
import { cutDatabase } from "./cut-database.ts";
import { droppingLink } from "./dropping-link.ts";
import { fullDisk } from "./full-disk.ts";
import { killDatabase, killOverDatabase } from "./kill-database.ts";
import { killServer } from "./kill-server.ts";
import { killTablet } from "./kill-tablet.ts";
import { readOnlyFolder } from "./read-only.ts";
import { sameItem } from "./same-item.ts";
import { tornCarry } from "./torn-carry.ts";
import type { Size, Trial } from "./trial.ts";

/** @param kills of each sort but of PostgreSQL itself, which takes longer to stand up again */
export const killsOf = (kills: number): Omit<Size, "outbox" | "linkDropsMs"> => ({
  serverKills: kills,
  tabletKills: kills,
  overDatabase: kills,
  databaseKills: Math.ceil(kills / 10),
});

export const FULL: Size = { ...killsOf(1000), outbox: 10_000, linkDropsMs: 2000 };
export const SHORT: Size = { ...killsOf(2), outbox: 1000, linkDropsMs: 250 };

export const TRIALS: readonly Trial[] = [
  killServer,
  killTablet,
  killOverDatabase,
  killDatabase,
  fullDisk,
  readOnlyFolder,
  clockBack,
  cutDatabase,
  tornCarry,
  sameItem,
  droppingLink,
];
