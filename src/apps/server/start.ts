import { listen, newServer, type RunningServer } from "./new-server.ts";
import { type PageOptions, servePageFiles, servePlan } from "./page.ts";
import { PlanShelf } from "./plan-shelf.ts";

export type { RunningServer } from "./new-server.ts";

export interface ServerOptions extends PageOptions {
  /** 0 takes any free port; left out: 8620, else the next free one. */
  readonly port?: number;
}

/** The campaign's page and its data, for this machine only. */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const server = await newServer({ bodyLimit: 1024, requestTimeoutMs: 10_000 }); // next to nothing is sent to it
  await servePageFiles(server);
  servePlan(server, new PlanShelf(options));
  const port = await listen(server, options.port);
  return { address: `http://127.0.0.1:${port}`, close: () => server.close() };
}
