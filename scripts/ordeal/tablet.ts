/** A tablet on which somebody enters note after note, as fast as its outbox takes them, while it sends what it has to a server.
 *  It says each id once the outbox has it, which is when a person sees the entry stand.   Arguments: the server's address, its token, the outbox. */
import { setTimeout as sleep } from "node:timers/promises";
import { penOf } from "../../src/core/log/pen.ts";
import { send } from "./link.ts";
import { openOutbox } from "./outbox.ts";
import { CAMPAIGN, noteOn, writerFrom } from "./writer.ts";

const DEVICE = "tablet-1";
const BATCH = 50;
const [address = "", token = "", path = ""] = process.argv.slice(2);
const outbox = openOutbox(path);
const writer = writerFrom(penOf(outbox.events, CAMPAIGN, DEVICE));
console.log("ready");

async function sendOn(): Promise<never> {
  for (;;) {
    const batch = outbox.events.slice(0, BATCH);
    const last = batch.at(-1);
    if (last && (await send({ address, token }, batch)) === "kept") outbox.sent(last);
    await sleep(1);
  }
}

async function enterOn(): Promise<never> {
  for (let i = 0; ; i++) {
    const event = writer.write(noteOn(`B-${i % 40}`, 1 + (i % 20)));
    outbox.put(event);
    console.log(event.id);
    await sleep(1);
  }
}

await Promise.all([sendOn(), enterOn()]);
