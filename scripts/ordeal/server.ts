/** A server process with nothing but the keep behind it: `POST /events` takes a batch and answers once it is durable, `GET /events?after=` gives
 *  what came after a place. It says its address, and ends when it is killed.   Arguments: a log file, or the address of a database. */
import { createServer, type IncomingMessage } from "node:http";
import type { AddressInfo } from "node:net";
import type { LogEvent } from "../../src/core/log/event.ts";
import { type Appended, KeepFault } from "../../src/edge/keep/keep.ts";
import { openDatabaseKeep, openFileKeep } from "../../src/edge/keep/open-keep.ts";
import { CAMPAIGN } from "./writer.ts";

const PAGE = 2000;
const [where = ""] = process.argv.slice(2);
const opened = await (where.startsWith("postgresql:") ? openDatabaseKeep(where) : openFileKeep(where));
if (!opened.ok) {
  console.log(opened.problems[0]?.code);
  process.exit(2);
}
const keep = opened.value;

async function bodyOf(request: IncomingMessage): Promise<string> {
  const pieces: Buffer[] = [];
  for await (const piece of request) pieces.push(piece as Buffer);
  return Buffer.concat(pieces).toString();
}

async function answerTo(request: IncomingMessage): Promise<unknown> {
  if (request.method === "POST") {
    const events = JSON.parse(await bodyOf(request)) as LogEvent[]; // the keep judges each of them
    return (await keep.append(events)) satisfies Appended;
  }
  const after = Number(new URL(request.url ?? "/", "http://127.0.0.1").searchParams.get("after"));
  return keep.after(CAMPAIGN, after, PAGE);
}

const server = createServer((request, response) => {
  answerTo(request).then(
    (answer) => response.setHeader("content-type", "application/json").end(JSON.stringify(answer)),
    (error: unknown) => {
      response.statusCode = 500;
      response.end(JSON.stringify(error instanceof KeepFault ? error.problem : { code: `${error}` }));
    },
  );
});
server.listen(0, "127.0.0.1", () => {
  console.log(`http://127.0.0.1:${(server.address() as AddressInfo).port}`); // it listens on a port
});
