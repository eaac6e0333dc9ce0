/** Opens the log of a folder, counts what is in it, and tries to write: says both.   Argument: the folder. */
import { allEvents } from "../../src/edge/keep/keep.ts";
import { openKeep } from "../../src/edge/keep/open-keep.ts";
import { CAMPAIGN, newWriter, noteOn } from "./writer.ts";

const opened = await openKeep(process.argv[2] ?? "");
if (opened.ok) {
  let count = 0;
  for await (const _ of allEvents(opened.value, CAMPAIGN)) count++;
  const { refused } = await opened.value.append([newWriter("tablet-2").write(noteOn("B-001"))]);
  console.log(`${count} ${refused[0]?.code ?? "kept"}`);
  await opened.value.close();
} else console.log(`0 ${opened.problems[0]?.code}`);
