import { disagreementsOf } from "../../src/core/log/campaign-of.ts";
import type { LogEvent } from "../../src/core/log/event.ts";
import { fold } from "../../src/core/log/fold.ts";
import { seenOf } from "../../src/core/log/seen.ts";
import { snapshotOf } from "../../src/core/log/snapshot.ts";
import type { CampaignState } from "../../src/core/log/state.ts";
import type { Entry } from "../../src/core/log/write-event.ts";
import { addDays, type Day } from "../../src/core/units/day.ts";
import { fetchAfter, letIn, send } from "./link.ts";
import { startServer } from "./process.ts";
import { type Trial, unless } from "./trial.ts";
import { newWriter, noteOn, type Writer } from "./writer.ts";

const ITEM = "B-001";
const MONDAY = "2026-06-01" as Day;
const DAYS = 7;
const DAY_MS = 86_400_000;

export const sameItem: Trial = {
  name: "two devices on the same item, offline for a week",
  run: async ({ folder }) => {
    const token = (device: string): string => letIn(folder, device);
    const tokens = { laptop: token("laptop"), wet: token("tablet-1"), dry: token("tablet-2") };
    const server = await startServer(folder);
    const from = (device: keyof typeof tokens) => ({ address: server.first, token: tokens[device] });
    const lead = newWriter("laptop");
    const began = Date.now() - DAYS * DAY_MS;
    const first = lead.write(finding("no", MONDAY, []), began);
    const [wet, dry] = [
      week(newWriter("tablet-1"), "yes", first, began),
      week(newWriter("tablet-2"), "no", first, began),
    ];
    const answers = [
      await send(from("laptop"), [first]),
      await send(from("dry"), dry),
      await send(from("wet"), wet),
    ];
    const kept = ((await fetchAfter(from("laptop"))) ?? []).map(({ event }) => event);
    const state = fold(kept);
    const [open, ...more] = disagreementsOf(state);
    const settled = lead.write(settling(state));
    answers.push(await send(from("laptop"), [settled]));
    await server.kill();
    const isSame = snapshotOf(state) === snapshotOf(fold([first, ...wet, ...dry]));
    return {
      line: `all ${kept.length} events are kept, either order of coming gives the same state, ${more.length + (open ? 1 : 0)} disagreement (${open?.answers.map(({ payload }) => payload.answer).join(" against ")}) stands until people settle it`,
      faults: [
        ...unless(
          answers.every((answer) => answer === "kept") && kept.length === 1 + wet.length + dry.length,
          "not all were taken",
        ),
        ...unless(isSame, "the order of coming makes a difference"),
        ...unless(open?.test === "wet" && more.length === 0, "the disagreement is not told as one"),
        ...unless(disagreementsOf(fold([settled], state)).length === 0, "settled, it still stands"),
      ],
    };
  },
};

const finding = (answer: string, day: Day, seen: readonly string[]): Entry => ({
  kind: "findingRecorded",
  payload: { item: ITEM, part: "", test: "wet", answer, day },
  who: { role: "scribe", person: "MQ" },
  seen,
});

/** A week of looks and notes by one who knows the first finding, and of the other device nothing. */
function week(writer: Writer, answer: string, first: LogEvent, began: number): LogEvent[] {
  let state = fold([first]);
  return Array.from({ length: DAYS }, (_, i) => {
    const day = addDays(MONDAY, i);
    const payload = { item: ITEM, part: "", test: "wet", answer, day };
    const now = began + (i + 1) * DAY_MS - 3_600_000;
    const look = writer.write(finding(answer, day, seenOf(state, "findingRecorded", payload)), now);
    state = fold([look], state);
    return [look, writer.write(noteOn(ITEM), now + 1)];
  }).flat();
}

function settling(state: CampaignState): Entry {
  const payload = {
    item: ITEM,
    part: "",
    test: "wet",
    answer: "yes",
    day: addDays(MONDAY, DAYS),
    by: ["MQ", "TL"],
  };
  return {
    kind: "disagreementSettled",
    payload,
    who: { role: "scribe", person: "TL" },
    seen: seenOf(state, "disagreementSettled", payload),
  };
}
