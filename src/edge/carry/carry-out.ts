import { open, rename, rm, stat } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import { lackedBy, unbroken } from "../../core/log/carry-reach.ts";
import type { LogEvent } from "../../core/log/event.ts";
import { type Outcome, type Problem, refused } from "../../core/outcome/problem.ts";
import { allEvents, type Keep } from "../keep/keep.ts";
import { syncFolder } from "../keep/sqlite-base.ts";
import { blocksOf } from "./blocks.ts";
import { carryBytes } from "./carry-file.ts";
import { type DeviceKey, wordsOf } from "./device-key.ts";
import { type KnownDevice, reachOf } from "./known-devices.ts";
import { linksIn } from "./links.ts";
import { type BlockRow, sealManifest } from "./manifest.ts";

/** A log as one signed file. */
export interface Carried {
  readonly bytes: Buffer;
  readonly events: number;
  readonly blocks: number;
  /** Pictures that are named by their SHA-256, and not in it. */
  readonly pictures: number;
}

/** Packs the log of a campaign.   @param receiver absent: everything; else what this device may lack   @param now milliseconds since 1970 */
export async function packed(
  keep: Keep,
  campaign: string,
  key: DeviceKey,
  now: number,
  receiver?: KnownDevice,
): Promise<Carried> {
  const { links, last } = await linksIn(keep, campaign);
  const isLacked = receiver ? lackedBy(reachOf(receiver), links) : () => true;
  let pictures = 0;
  async function* chosen(): AsyncGenerator<LogEvent> {
    for await (const { place, event } of allEvents(keep, campaign)) {
      if (place > last) return; // written since, and not in the reach
      if (!isLacked(event)) continue;
      if (event.kind === "pictureTaken") pictures++;
      yield event;
    }
  }
  const rows: BlockRow[] = [];
  const bodies: Buffer[] = [];
  for await (const { row, body } of blocksOf(chosen())) {
    rows.push(row);
    bodies.push(body);
  }
  const reach = [...unbroken(links)].map(([device, reached]) => ({ device, ...reached }));
  const manifest = { campaign, made: now, all: receiver === undefined, reach, blocks: rows };
  return {
    bytes: carryBytes(sealManifest(manifest, key), bodies),
    events: rows.reduce((all, { events }) => all + events, 0),
    blocks: rows.length,
    pictures,
  };
}

/** Puts a carry file into a folder, whole or not at all. @param when as it stands in the name @returns its path */
export async function putCarry(
  { bytes }: Carried,
  folder: string,
  to: string,
  key: DeviceKey,
  when: string,
): Promise<Outcome<string>> {
  const [word] = wordsOf(key.open).split("-");
  const path = join(to, `${basename(resolve(folder))}.${word}.${when}.carry`);
  const part = `${path}.part`;
  if (!(await stat(to).catch(() => null))?.isDirectory()) return refused(noPlace(to));
  try {
    const handle = await open(part, "w");
    await handle.writeFile(bytes);
    await handle.sync();
    await handle.close();
    await rename(part, path);
    syncFolder(to);
    return { ok: true, value: path };
  } catch (error) {
    return refused(notWritten(to, error));
  } finally {
    await rm(part, { force: true });
  }
}

const noPlace = (to: string): Problem => ({
  code: "carry-no-place",
  severity: "stop",
  got: to,
  remedy: "Plug in the stick, or name a folder that is there. Nothing was written.",
});

const notWritten = (got: string, error: unknown): Problem => ({
  code: "carry-not-written",
  severity: "stop",
  got,
  expected: error instanceof Error ? error.message : String(error),
  remedy: "Nothing of it is left there. Make room or take another stick, and do it again.",
});
