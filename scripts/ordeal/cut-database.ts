import { mkdirSync, statSync, truncateSync } from "node:fs";
import { join } from "node:path";
import type { Day } from "../../src/core/units/day.ts";
import { backUp } from "../../src/edge/keep/backup.ts";
import { restore } from "../../src/edge/keep/restore.ts";
import { closeUp } from "../../src/edge/keep/sqlite-base.ts";
import { fetchAfter, letIn, send } from "./link.ts";
import { startServer } from "./process.ts";
import { sumOf } from "./read-only.ts";
import { type Trial, unless } from "./trial.ts";
import { newWriter, noteOn } from "./writer.ts";
import { writtenLog } from "./written-log.ts";

const TODAY = "2026-06-19" as Day;
const BEFORE_BACKUP = 300;
const SINCE = 40;

export const cutDatabase: Trial = {
  name: "truncated database",
  run: async ({ folder }) => {
    const file = join(folder, "log.leafward.db");
    const stick = join(folder, "stick");
    mkdirSync(stick);
    await writtenLog(file, BEFORE_BACKUP);
    const copied = await backUp(folder, stick, TODAY, TODAY);
    if (!copied.ok)
      return { line: "no backup could be made", faults: copied.problems.map(({ code }) => code) };
    const tablet = newWriter("tablet-2");
    const since = Array.from({ length: SINCE }, () => tablet.write(noteOn("B-001", 20)));
    const token = letIn(folder, "tablet-2");
    const whole = await startServer(folder);
    await send({ address: whole.first, token }, since);
    await whole.kill();
    closeUp(file);
    truncateSync(file, Math.floor(statSync(file).size * 0.6));
    const cut = sumOf(file);
    const hurt = await startServer(folder);
    const refused = await send({ address: hurt.first, token }, since);
    await hurt.kill();
    const isUntouched = sumOf(file) === cut;
    const restored = await restore(copied.value.path, folder, "2026-06-19T063000", TODAY);
    const mended = await startServer(folder);
    const again = await send({ address: mended.first, token }, since); // the tablet's outbox
    const kept = (await fetchAfter({ address: mended.first, token })) ?? [];
    await mended.kill();
    const why = hurt.first.startsWith("keep-") ? hurt.first : refused;
    return {
      line: `cut to 60 % it refused (${why}) and was not touched; backup put back and the tablet's outbox sent again: ${kept.length} of ${BEFORE_BACKUP + SINCE} events`,
      faults: [
        ...unless(why === "keep-damaged", `the answer was ${why}`),
        ...unless(isUntouched, "the cut file was written to"),
        ...(restored.ok
          ? []
          : restored.problems.map(
              ({ code, file, expected }) => `restore: ${code} ${file ?? ""} ${expected ?? ""}`,
            )),
        ...unless(again === "kept" && kept.length === BEFORE_BACKUP + SINCE, "events are missing"),
      ],
    };
  },
};
