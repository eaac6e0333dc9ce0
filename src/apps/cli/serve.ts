import { accessSync, constants } from "node:fs";
import { readFile } from "node:fs/promises";
import { hostname, networkInterfaces } from "node:os";
import { basename, join, resolve } from "node:path";
import { parseArgs } from "node:util";
import type { Problem } from "../../core/outcome/problem.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { sayProblem } from "../../core/say/problems.ts";
import { readCampaignFolder } from "../../edge/intake/read-campaign.ts";
import { backupsMeanwhile } from "../../edge/keep/backups-meanwhile.ts";
import { KeepFault } from "../../edge/keep/keep.ts";
import { campaignHere } from "../../edge/keep/open-campaign.ts";
import { databaseUrl, mayHaveLog, openKeep } from "../../edge/keep/open-keep.ts";
import { openProgramme } from "../../edge/programme/programme.ts";
import { projectFolder } from "../../edge/published.ts";
import { fingerprintOf, ownCertificate } from "../../edge/serve/certificate.ts";
import { newDeviceName } from "../../edge/serve/new-device-name.ts";
import { spelled } from "../../edge/serve/pairing-codes.ts";
import { whatIfService } from "../../edge/solve/what-if-service.ts";
import type { PageOptions } from "../server/page.ts";
import { type LogServer, type LogServerOptions, startLogServer } from "../server/serve-log.ts";
import { sayBackup } from "./keep.ts";
import { machineNow } from "./now.ts";

type Out = (line: string) => void;

const HELP = `leafward serve: the campaign's log for several devices, without the internet

  npx leafward serve <folder>

Devices are let in by a code of eight letters; each writes what its role may. The page of the last plan
is served with it. Only this machine is answered, unless --local-network is given: then every machine of
the network it is in, by TLS with a certificate of its own. Compare its fingerprint before you trust it.

  --local-network   answer other machines of this network too
  --port n          port (default: 8620, else the next free one)`;

/** Serves until stopped. @returns 0 stopped · 2 nothing could be served */
export async function serve(args: string[], out: Out, complain: Out): Promise<number> {
  const asked = askedOf(args);
  if (asked === "help") {
    out(HELP);
    return 0;
  }
  if (typeof asked === "string") return refuse([asked], complain);
  const { folder, port, forNetwork } = asked;
  if (!mayHaveLog(folder)) return refuse([noLog(folder)], complain);
  const opened = await openKeep(folder);
  if (!opened.ok) return refuse(opened.problems.map(sayProblem), complain);
  const keep = opened.value;
  const campaign = await campaignHere(keep, (await readCampaignFolder(folder)).campaign);
  const addresses = forNetwork ? networkAddresses() : [];
  const stops = [
    ...(campaign === null ? [noLog(folder)] : []),
    ...(forNetwork && addresses.length === 0
      ? ["This machine is in no network now. Join one, then start again."]
      : []),
  ];
  if (campaign === null || stops.length > 0) {
    await keep.close();
    return refuse(stops, complain);
  }
  if (keep.shut) complain(sayProblem(keep.shut));
  if (!mayWrite(folder)) complain(ONLY_READ);
  const page = await pageOfLastPlan(folder);
  const network = forNetwork ? networkOf(folder, addresses) : undefined;
  const url = databaseUrl();
  const programme = url === undefined ? null : await openProgramme(url);
  const server = await started({
    ...{ folder, keep, campaign },
    ...(programme?.ok ? { programme: programme.value } : {}),
    ...(page ? { page } : {}),
    ...(network ? { network } : {}),
    ...(port === undefined ? {} : { port }),
  });
  if (!("address" in server)) {
    if (programme?.ok) await programme.value.close();
    await keep.close();
    return refuse([sayProblem(server)], complain);
  }
  for (const line of servedLines({ campaign, page, folder, server, network })) out(line);
  sayCodes(server, out);
  const backups = keep.shut
    ? null
    : backupsMeanwhile(
        folder,
        () => machineNow().today,
        (done) => sayBackup(done).forEach(out),
      );
  await new Promise<void>((stop) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, stop);
  });
  process.stdin.pause();
  await backups?.close();
  await server.close();
  if (programme?.ok) await programme.value.close();
  await keep.close();
  return 0;
}

/** @returns the server, or why the log cannot be served */
async function started(options: LogServerOptions): Promise<LogServer | Problem> {
  try {
    return await startLogServer(options);
  } catch (error) {
    if (error instanceof KeepFault) return error.problem;
    throw error;
  }
}

const ONLY_READ =
  "In this folder nothing can be written: entries and pictures are refused, and devices are let in anew at each start.";

function mayWrite(folder: string): boolean {
  try {
    accessSync(folder, constants.W_OK);
    return true;
  } catch {
    return false;
  }
}

interface Asked {
  readonly folder: string;
  readonly port: number | undefined;
  readonly forNetwork: boolean;
}

/** @returns `help`, or what to say when it does not fit */
function askedOf(args: string[]): Asked | string {
  try {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: {
        "local-network": { type: "boolean", default: false },
        port: { type: "string" },
        help: { type: "boolean", short: "h", default: false },
      },
    });
    const [folder] = positionals;
    if (values.help) return "help";
    if (folder === undefined || positionals.length > 1) return HELP;
    const port = values.port === undefined ? undefined : Number(values.port);
    if (port !== undefined && !(Number.isInteger(port) && port >= 0 && port < 65_536))
      return `--port ${values.port}: expected a whole number up to 65535.`;
    return { folder, port, forNetwork: values["local-network"] };
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    return `${error.message}\n\n${HELP}`;
  }
}

const noLog = (folder: string): string => `There is no log of this campaign yet: npx leafward keep ${folder}`;

function refuse(lines: readonly string[], complain: Out): number {
  for (const line of lines) complain(line);
  return 2;
}

/** Where other machines find this one. */
const networkAddresses = (): string[] =>
  Object.values(networkInterfaces())
    .flatMap((each) => each ?? [])
    .filter(({ family, internal }) => family === "IPv4" && !internal)
    .map(({ address }) => address);

function networkOf(folder: string, addresses: readonly string[]): NonNullable<LogServerOptions["network"]> {
  const own = hostname().toLowerCase();
  const names = [...addresses, own, ...(own.includes(".") ? [] : [`${own}.local`])];
  return { names, tls: ownCertificate(folder, [...names, "localhost", "127.0.0.1"], Date.now()) };
}

/** What `leafward plan` wrote last; undefined: nothing yet. */
async function pageOfLastPlan(folder: string): Promise<PageOptions | undefined> {
  const written = join(projectFolder(), "out", basename(resolve(folder)));
  try {
    const plan = JSON.parse(await readFile(join(written, "plan.json"), "utf8")) as Plan; // written by us
    const picture = await readFile(join(written, "picture.svg"), "utf8");
    return {
      plan,
      picture,
      papersFolder: join(written, "papers"),
      whatIf: whatIfService(folder, plan.planFrom),
    };
  } catch {
    return undefined;
  }
}

interface Served {
  readonly campaign: string;
  readonly page: PageOptions | undefined;
  readonly folder: string;
  readonly server: LogServer;
  readonly network: LogServerOptions["network"] | undefined;
}

function servedLines({ campaign, page, folder, server, network }: Served): string[] {
  const plan = page
    ? `The page shows the plan from ${page.plan.planFrom}; a newer one is shown after a new start.`
    : `There is no plan to show yet: npx leafward plan ${folder}`;
  if (!network) return [`${campaign}: ${server.address}, on this machine alone. ${plan}`];
  const { words, digits } = fingerprintOf(network.tls);
  return [
    `${campaign}, on the local network. ${plan}`,
    ...network.names.map((name) => `  https://${name}:${server.port}`),
    "Each browser will warn that it does not know this certificate. Before you go on, compare; if one letter differs, do not.",
    `  read out:       ${words}`,
    `  in the browser: ${digits.slice(0, 48)}`,
    `  (SHA-256)       ${digits.slice(48)}`,
  ];
}

/** Whoever sits at this machine holds the folder, and so may come in as lead. */
function sayCodes(server: LogServer, out: Out): void {
  const say = (): void =>
    out(
      `To come in as lead: ${spelled(server.leadCode(newDeviceName("laptop")).code)}   (once, within ten minutes; Enter gives a new one, Ctrl+C stops)`,
    );
  say();
  if (process.stdin.isTTY) process.stdin.on("data", say);
}
