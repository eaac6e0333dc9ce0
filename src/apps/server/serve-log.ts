import { basename, dirname, join, resolve } from "node:path";
import cookie from "@fastify/cookie";
import multipart from "@fastify/multipart";
import rateLimit from "@fastify/rate-limit";
import type { FastifyInstance } from "fastify";
import { serializerCompiler, validatorCompiler, type ZodTypeProvider } from "fastify-type-provider-zod";
import type { Day } from "../../core/units/day.ts";
import type { Keep } from "../../edge/keep/keep.ts";
import type { Programme } from "../../edge/programme/programme.ts";
import { projectFolder } from "../../edge/published.ts";
import { type Admitted, deviceBook } from "../../edge/serve/device-book.ts";
import { openDesk } from "../../edge/serve/log-desk.ts";
import { type PairingCode, pairingCodes } from "../../edge/serve/pairing-codes.ts";
import { publishedRoles } from "../../edge/serve/published-roles.ts";
import { refusals } from "../../edge/serve/refusals.ts";
import { openServerFile } from "../../edge/serve/server-file.ts";
import { whatIfService } from "../../edge/solve/what-if-service.ts";
import { answerApiFaults } from "./api-faults.ts";
import { describe, serveDescription } from "./description.ts";
import { serveDevices } from "./device-routes.ts";
import { guard, recognise } from "./door.ts";
import type { Api, House } from "./house.ts";
import { serveLive } from "./live.ts";
import { serveLog } from "./log-routes.ts";
import { listen, newServer, type RunningServer } from "./new-server.ts";
import { type PageOptions, servePageFiles, servePlan } from "./page.ts";
import { MOST_PICTURE_BYTES, servePictures } from "./picture-routes.ts";
import { planMaker } from "./plan-maker.ts";
import { PlanShelf } from "./plan-shelf.ts";
import { serveProgramme } from "./programme-route.ts";
import { type Planning, serveReplan } from "./replan-route.ts";
import { staleWhatIf } from "./stale-what-if.ts";
import { serveState } from "./state-route.ts";
import { serveTables } from "./tables-route.ts";
import { serveWork } from "./work-route.ts";

/** One device's requests, or those of one address while nobody is let in there. */
const REQUESTS_A_MINUTE = 600;

export interface LogServerOptions {
  /** The campaign's folder: pictures and what the server keeps for itself go there. */
  readonly folder: string;
  /** The log; it stays open when the server closes. */
  readonly keep: Keep;
  /** The name under which the campaign was founded. */
  readonly campaign: string;
  /** The plan's page, where there is a plan. */
  readonly page?: PageOptions;
  /** Where plans that are accepted here are written; left out: where the page's papers lie, else where `leafward plan` writes. */
  readonly outFolder?: string;
  /** For other machines on this network, by TLS; left out: for this machine alone. */
  readonly network?: {
    readonly tls: { readonly key: string; readonly cert: string };
    /** Names and addresses of this machine. */
    readonly names: readonly string[];
  };
  /** The day it is taken to be, where somebody looks around a demo; left out: as the clocks say. */
  readonly pretendDay?: Day;
  /** The campaigns of the database the log is in, where it is in one. */
  readonly programme?: Programme;
  /** 0 takes any free port; left out: 8620, else the next free one. */
  readonly port?: number;
  readonly requestsAMinute?: number;
  /** ms since 1970; left out: the machine's clock. */
  readonly now?: () => number;
}

export interface LogServer extends RunningServer {
  readonly port: number;
  /** A code that lets a device in: whoever runs the server holds the folder. */
  codeFor(admitted: Admitted): PairingCode;
  /** A code that lets a device in as lead. */
  leadCode(device: string): PairingCode;
}

/** The campaign's log for several devices, and its page. */
export async function startLogServer(options: LogServerOptions): Promise<LogServer> {
  const { folder, keep, campaign, page, network, now = Date.now } = options;
  const { requestsAMinute = REQUESTS_A_MINUTE, programme = null } = options;
  const file = openServerFile(folder);
  const desk = await openDesk(keep, campaign);
  const house: House = {
    ...{ folder, desk, now },
    devices: deviceBook(file),
    refusals: refusals(file),
    codes: pairingCodes(),
    roles: publishedRoles(),
    secure: network !== undefined,
    pretendDay: options.pretendDay ?? null,
  };
  const shelf = new PlanShelf(page ? { whatIf: whatIfService(folder, page.plan.planFrom), ...page } : null);
  const planning = { maker: planMaker(folder), shelf, outFolder: outFolderOf(options) };
  const server = await newServer({
    ...{ bodyLimit: 64 * 1024, requestTimeoutMs: 300_000 }, // a picture over a weak line takes minutes
    ...(network ? { tls: network.tls, names: network.names } : {}),
  });
  await server.register(cookie);
  recognise(server, house);
  await server.register(rateLimit, {
    max: requestsAMinute,
    timeWindow: 60_000,
    keyGenerator: ({ device, ip }) => device?.device ?? `address ${ip}`,
  });
  if (network) guard(server, house); // whoever sits at this machine can open the folder itself, and its plan
  await servePageFiles(server);
  servePlan(server, shelf);
  await server.register(async (inner) => {
    if (!network) guard(inner, house);
    await serveApi(inner, house, programme, planning, requestsAMinute / 20);
  });
  const looking = staleWhatIf(desk, shelf);
  server.addHook("onClose", async () => {
    await looking.end();
    await desk.close();
    file.close();
  });
  const port = await listen(server, options.port, network ? "0.0.0.0" : "127.0.0.1");
  return {
    address: network ? `https://${network.names[0]}:${port}` : `http://127.0.0.1:${port}`,
    port,
    codeFor: (admitted) => house.codes.make(admitted, now()),
    leadCode: (device) => house.codes.make({ device, role: "lead", person: null }, now()),
    close: () => server.close(),
  };
}

const outFolderOf = ({ outFolder, page, folder }: LogServerOptions): string =>
  outFolder ?? (page ? dirname(page.papersFolder) : join(projectFolder(), "out", basename(resolve(folder))));

async function serveApi(
  inner: FastifyInstance,
  house: House,
  programme: Programme | null,
  planning: Planning,
  codesAMinute: number,
): Promise<void> {
  inner.setValidatorCompiler(validatorCompiler);
  inner.setSerializerCompiler(serializerCompiler);
  answerApiFaults(inner);
  await inner.register(multipart, {
    limits: { files: 1, parts: 1, fields: 0, fileSize: MOST_PICTURE_BYTES },
  });
  const api: Api = inner.withTypeProvider<ZodTypeProvider>();
  await describe(api);
  serveLog(api, house);
  serveState(api, house);
  serveLive(api, house);
  servePictures(api, house);
  serveDevices(api, house, codesAMinute);
  serveProgramme(api, programme);
  serveTables(api, house);
  serveWork(api, planning.shelf);
  serveReplan(api, house, planning);
  serveDescription(api);
}
