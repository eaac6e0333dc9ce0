/** A campaign's server in a process of its own. It says its address, or why it does not start, and ends when it is killed.
 *  Arguments: the campaign's folder, and the address of a database where the log is in one. */

import { startLogServer } from "../../src/apps/server/serve-log.ts";
import { openDatabaseKeep, openKeep } from "../../src/edge/keep/open-keep.ts";
import { CAMPAIGN } from "./writer.ts";

const NO_LIMIT = 1_000_000;
const [folder = "", url] = process.argv.slice(2);
const opened = await (url === undefined ? openKeep(folder) : openDatabaseKeep(url));
if (opened.ok) {
  const wish = { folder, keep: opened.value, campaign: CAMPAIGN, port: 0, requestsAMinute: NO_LIMIT };
  const server = await startLogServer(wish);
  console.log(server.address);
} else console.log(opened.problems[0]?.code);
