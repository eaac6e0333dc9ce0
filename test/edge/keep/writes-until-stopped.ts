/** Writes notes into a keep, one at a time, and says each id once it was acknowledged; a refusal it says and ends. */
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { deviceCalled } from "../../core/log/some-events.ts";

const [path = "", text = "x"] = process.argv.slice(2);
const opened = await openFileKeep(path);
if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
const writer = deviceCalled("tablet-1");
for (;;) {
  const event = writer.write({ payload: { item: "B-001", part: "", text } });
  const { added, refused } = await opened.value.append([event]);
  process.stdout.write(`${added === 1 ? event.id : (refused[0]?.code ?? "nothing")}\n`);
  if (added !== 1) break;
}
await opened.value.close();
