import { inOrder, type LogEvent } from "../../src/core/log/event.ts";
import { penOf } from "../../src/core/log/pen.ts";
import { verifyChain } from "../../src/core/log/verify-chain.ts";
import { fetchAfter, letIn, send } from "./link.ts";
import { startServer } from "./process.ts";
import { type Trial, unless } from "./trial.ts";
import { CAMPAIGN, newWriter, noteOn, writerFrom } from "./writer.ts";

const TWO_YEARS_MS = 2 * 365 * 86_400_000;
const EACH = 100;

export const clockBack: Trial = {
  name: "clock set back two years",
  run: async ({ folder }) => {
    const token = letIn(folder, "tablet-1");
    const server = await startServer(folder);
    const line = { address: server.first, token };
    const now = Date.now();
    const first = newWriter("tablet-1");
    const before = Array.from({ length: EACH }, (_, i) => first.write(noteOn("B-001"), now + i));
    const again = writerFrom(penOf(before, CAMPAIGN, "tablet-1")); // the battery was out: it begins anew from what it wrote
    const after = Array.from({ length: EACH }, (_, i) =>
      again.write(noteOn("B-001"), now - TWO_YEARS_MS + i),
    );
    const answers = [await send(line, before), await send(line, after)];
    const kept = ((await fetchAfter(line)) ?? []).map(({ event }) => event);
    await server.kill();
    const order = [...kept].sort(inOrder).map(({ number }) => number);
    const isRising = order.every((number, at) => number === at + 1);
    return {
      line: `${kept.length} events before and after were taken, their order in the log is the order of writing, ids rise, ${verifyChain(kept).length} breaks in the chain`,
      faults: [
        ...unless(
          answers.every((answer) => answer === "kept") && kept.length === 2 * EACH,
          "not all were taken",
        ),
        ...unless(isRising, "what was written later does not stand later"),
        ...unless(rises(kept), "ids do not rise"),
        ...verifyChain(kept).map(({ code, got }) => `${code} ${got ?? ""}`),
      ],
    };
  },
};

const rises = (events: readonly LogEvent[]): boolean =>
  events.every(({ id }, at) => at === 0 || id > (events[at - 1]?.id ?? ""));
