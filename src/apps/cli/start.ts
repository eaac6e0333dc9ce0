import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Day } from "../../core/units/day.ts";
import { watchStores } from "../../core/ward/store-watch.ts";
import { projectFolder } from "../../edge/published.ts";
import { newDeviceName } from "../../edge/serve/new-device-name.ts";
import { spelled } from "../../edge/serve/pairing-codes.ts";
import { whatIfService } from "../../edge/solve/what-if-service.ts";
import { openInBrowser } from "../server/open.ts";
import type { PageOptions } from "../server/page.ts";
import { type LogServer, startLogServer } from "../server/serve-log.ts";
import { startServer } from "../server/start.ts";
import { answerLines } from "./answer.ts";
import { logOf, type OpenLog } from "./begin-log.ts";
import { copyOfDemo } from "./look-around.ts";
import { mouldAhead } from "./mould-ahead.ts";
import { type PlanRequest, planAndWrite } from "./plan.ts";

type StartRequest = Omit<PlanRequest, "folder"> & { folder: string | undefined; port: number | undefined };

/** Plans the campaign (the demo when none is named), opens its rooms on this machine, prints the answer, and stays until stopped. */
export async function startCommand(request: StartRequest): Promise<number> {
  const wanted = request.folder ?? join(projectFolder(), "demo", "saltmere");
  const copy = await copyOfDemo(wanted);
  const folder = copy ?? wanted;
  const log = await logOf(folder, request.complain);
  const written = await planAndWrite({ ...request, folder });
  if (!written) {
    await log?.keep.close();
    return 2;
  }
  const { plan, campaign } = written.planned;
  const page: PageOptions = {
    plan,
    picture: await readFile(join(written.folder, "picture.svg"), "utf8"),
    papersFolder: join(written.folder, "papers"),
    whatIf: whatIfService(folder, campaign.planFrom),
  };
  const served = await serveRooms({
    log,
    folder,
    page,
    port: request.port,
    pretendDay: copy ? campaign.planFrom : null,
  });
  const { out } = request;
  for (const line of answerLines(plan, watchStores(campaign.climate), mouldAhead(written.planned))) out(line);
  out("");
  out(`The rooms: ${served.address}   (papers and tables: ${written.folder})   Stop with Ctrl+C.`);
  if (copy) out(`You look around a copy of the demo: ${copy}. Delete it to begin anew.`);
  if (served.code) out(`Another window comes in by the code ${served.code}, once, within ten minutes.`);
  openInBrowser(served.doorway);
  await new Promise<void>((stop) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, stop);
  });
  await served.server.close();
  await log?.keep.close();
  return 0;
}

interface Rooms {
  readonly log: OpenLog | null;
  readonly folder: string;
  readonly page: PageOptions;
  readonly port: number | undefined;
  readonly pretendDay: Day | null;
}

interface Served {
  readonly server: Pick<LogServer, "close">;
  readonly address: string;
  /** The address that lets this machine's own browser in. */
  readonly doorway: string;
  readonly code: string | null;
}

/** The rooms with their log; where it cannot be had, the plan's page alone. */
async function serveRooms({ log, folder, page, port, pretendDay }: Rooms): Promise<Served> {
  const at = port === undefined ? {} : { port };
  if (log === null) {
    const server = await startServer({ ...page, ...at });
    return { server, address: server.address, doorway: server.address, code: null };
  }
  const server = await startLogServer({ ...log, folder, page, ...at, ...(pretendDay ? { pretendDay } : {}) });
  const newCode = (): string => spelled(server.leadCode(newDeviceName("laptop")).code);
  const { address } = server;
  return { server, address, doorway: `${address}/#in=${newCode()}`, code: newCode() };
}
