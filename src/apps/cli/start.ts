import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { watchStores } from "../../core/ward/store-watch.ts";
import { projectFolder } from "../../edge/published.ts";
import { whatIfService } from "../../edge/solve/what-if-service.ts";
import { openInBrowser } from "../server/open.ts";
import { startServer } from "../server/start.ts";
import { answerLines } from "./answer.ts";
import { mouldAhead } from "./mould-ahead.ts";
import { type PlanRequest, planAndWrite } from "./plan.ts";

/** Plans the campaign (the demo when none is named), serves the page, prints the answer, and stays until stopped. */
export async function startCommand(
  request: Omit<PlanRequest, "folder"> & { folder: string | undefined; port: number | undefined },
): Promise<number> {
  const folder = request.folder ?? join(projectFolder(), "demo", "saltmere");
  const written = await planAndWrite({ ...request, folder });
  if (!written) return 2;
  const server = await startServer({
    plan: written.planned.plan,
    picture: await readFile(join(written.folder, "picture.svg"), "utf8"),
    papersFolder: join(written.folder, "papers"),
    whatIf: whatIfService(folder, written.planned.campaign.planFrom),
    ...(request.port === undefined ? {} : { port: request.port }),
  });
  const { plan, campaign } = written.planned;
  for (const line of answerLines(plan, watchStores(campaign.climate), mouldAhead(written.planned)))
    request.out(line);
  request.out("");
  request.out(`The page: ${server.address}   (papers and tables: ${written.folder})   Stop with Ctrl+C.`);
  openInBrowser(server.address);
  await new Promise<void>((stop) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, stop);
  });
  await server.close();
  return 0;
}
