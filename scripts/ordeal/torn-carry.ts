import { mkdirSync, truncateSync } from "node:fs";
import { join } from "node:path";
import { carryIn } from "../../src/edge/carry/carry-in.ts";
import { packed, putCarry } from "../../src/edge/carry/carry-out.ts";
import { deviceKey, wordsOf } from "../../src/edge/carry/device-key.ts";
import { eventsIn } from "../../src/edge/keep/open-campaign.ts";
import { openFileKeep, openKeep } from "../../src/edge/keep/open-keep.ts";
import { said } from "./kill-server.ts";
import { type Shown, type Trial, unless } from "./trial.ts";
import { CAMPAIGN } from "./writer.ts";
import { writtenLog } from "./written-log.ts";

const EVENTS = 3000;

export const tornCarry: Trial = {
  name: "half-written carry file",
  run: async ({ folder }) => {
    const [from, to] = [join(folder, "ward"), join(folder, "office")];
    for (const each of [from, to]) mkdirSync(each);
    const events = await writtenLog(join(from, "log.leafward.db"), EVENTS);
    const key = deviceKey(from);
    const log = await openFileKeep(join(from, "log.leafward.db"));
    if (!key.ok || !log.ok) return failed("the log cannot be carried out");
    const carried = await packed(log.value, CAMPAIGN, key.value, Date.now());
    await log.value.close();
    const whole = await putCarry(carried, from, folder, key.value, "whole");
    const half = await putCarry(carried, from, folder, key.value, "half");
    if (!whole.ok || !half.ok) return failed("no carry file was written");
    truncateSync(half.value, Math.floor(carried.bytes.length / 2));
    const words = wordsOf(key.value.open);
    const torn = await carryIn(to, half.value, words);
    if (!torn.ok) return failed(torn.problems.map(({ code }) => code).join(", "));
    const rest = await carryIn(to, whole.value);
    const kept = await openKeep(to, "read");
    const there = kept.ok
      ? new Set((await eventsIn(kept.value, CAMPAIGN)).map(({ hash }) => hash))
      : new Set();
    if (kept.ok) await kept.value.close();
    const { added, problems } = torn.value;
    return {
      line: `cut in half it gave ${said(added)} of ${said(EVENTS)} events in whole blocks and named ${problems.length} faults; the whole file then gave the rest, each once`,
      faults: [
        ...unless(added > 0 && added < EVENTS, `half a file gave ${added} events`),
        ...unless(problems.length > 0, "nothing was said of what is missing"),
        ...unless(
          rest.ok && rest.value.added === EVENTS - added,
          "the whole file did not give just the rest",
        ),
        ...unless(events.every(({ hash }) => there.has(hash)) && there.size === EVENTS, "not all is there"),
      ],
    };
  },
};

const failed = (why: string): Shown => ({ line: why, faults: [why] });
