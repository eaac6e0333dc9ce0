import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from "playwright-core";
import { logOf } from "../../../src/apps/cli/begin-log.ts";
import type { PageOptions } from "../../../src/apps/server/page.ts";
import { type LogServer, startLogServer } from "../../../src/apps/server/serve-log.ts";
import type { Role } from "../../../src/core/log/roles.ts";
import type { Day } from "../../../src/core/units/day.ts";
import type { Keep } from "../../../src/edge/keep/keep.ts";
import { projectFolder } from "../../../src/edge/published.ts";
import { BROWSER_FLAGS, browserPath } from "../browser.ts";
import { buildPageIfMissing } from "../built-page.ts";

export const hasBrowser = browserPath() !== null;
if (!hasBrowser)
  console.warn("Skipped: no Chrome or Chromium found for the rooms' tests. Set CHROME_PATH to one.");

/** Sizes the rooms are made for: a laptop, and a 10-inch tablet held upright. */
export const LAPTOP = { width: 1280, height: 800 };
export const TABLET = { width: 800, height: 1280 };

/** A campaign with its server, and browsers that come to it as tablets do. */
export interface ARealHouse {
  readonly folder: string;
  readonly keep: Keep;
  /** The server now; another one after `stop` and `startAgain`. */
  server(): LogServer;
  stop(): Promise<void>;
  startAgain(): Promise<void>;
  /** A device of its own, let in as a role, with its first page open. `complaints` gathers what its browser says of errors. */
  enter(role?: Role, more?: BrowserContextOptions & { readonly person?: string }): Promise<ADevice>;
  close(): Promise<void>;
}

export interface ADevice {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly complaints: readonly string[];
  /** Goes to a room: `#/ward/bag/B-3`. */
  go(hash: string): Promise<void>;
  /** Says who works on the device. */
  workAs(person: string): Promise<void>;
}

/** @param demo a folder of `demo/`, copied   @param today its pretended day */
export async function aRealHouse(demo: string, today: Day, page?: PageOptions): Promise<ARealHouse> {
  await buildPageIfMissing();
  const folder = mkdtempSync(join(tmpdir(), "leafward-rooms-"));
  cpSync(join(projectFolder(), "demo", demo), folder, { recursive: true });
  const log = await logOf(folder, () => {});
  if (log === null) throw new Error(`The log of ${demo} could not be begun.`);
  const start = (port: number): Promise<LogServer> =>
    startLogServer({
      ...log,
      ...{ folder, port, pretendDay: today, requestsAMinute: 1_000_000 },
      ...(page ? { page } : {}),
    });
  let server = await start(0);
  const { port } = server;
  let browser: Browser | null = null;
  let devices = 0;
  return {
    folder,
    keep: log.keep,
    server: () => server,
    stop: () => server.close(),
    startAgain: async () => {
      server = await start(port);
    },
    enter: async (role = "lead", { person, ...more } = {}) => {
      browser ??= await chromium.launch({ executablePath: browserPath() ?? "", args: BROWSER_FLAGS });
      const context = await browser.newContext({ viewport: LAPTOP, locale: "en-GB", ...more });
      const code = server.codeFor({ device: `device-${++devices}`, role, person: person ?? null }).code;
      const opened = await context.newPage();
      const complaints = listenTo(opened);
      await opened.goto(`${server.address}/#in=${code}`);
      await roomsOpen(opened, complaints);
      return {
        ...{ context, complaints, page: opened },
        go: async (hash) => {
          await opened.evaluate((to) => {
            location.hash = to;
          }, hash);
          await opened.getByRole("heading", { level: 1 }).waitFor();
        },
        workAs: async (code) => {
          await opened.getByLabel("Working here").selectOption(code).catch(saysInstead(opened, complaints));
        },
      };
    },
    close: async () => {
      await browser?.close();
      await server.close();
      await log.keep.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

const roomsOpen = (page: Page, complaints: readonly string[]): Promise<void> =>
  page.getByRole("navigation", { name: "Rooms" }).waitFor().catch(saysInstead(page, complaints));

/** What a page shows where something was waited for in vain. */
const saysInstead = (page: Page, complaints: readonly string[]) => async (error: unknown) => {
  const text = await page.locator("body").innerText();
  throw new Error(
    `${error}\nThe page shows: ${text.slice(0, 400)}\nThe browser said: ${complaints.join("; ")}`,
  );
};

function listenTo(page: Page): string[] {
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  return complaints;
}

/** What an accessibility checker finds, as rule and place. */
export const axe = async (page: Page) =>
  (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [
    id,
    nodes.map(({ target }) => String(target)),
  ]);

/** Controls smaller than a gloved finger wants: less than 44 px either way. Links inside a sentence are let be, as WCAG 2.2, 2.5.8, lets them. */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        "button, input, select, textarea, summary, [role=button], nav a",
      ),
    ]
      .filter((each) => each.offsetParent !== null)
      .flatMap((each) => {
        const own = each.matches("input[type=checkbox], input[type=radio]")
          ? (each.closest("label") ?? each)
          : each;
        const { width, height } = own.getBoundingClientRect();
        return Math.min(width, height) < 43.5 && width > 0
          ? [`${each.outerHTML.slice(0, 80)} ${width}×${height}`]
          : [];
      }),
  );

export const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
