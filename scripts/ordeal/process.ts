import { spawn } from "node:child_process";
import { once } from "node:events";
import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

/** A process of the ordeal, and what it says line by line. */
export interface Running {
  /** Its first line. */
  readonly first: string;
  /** Told of every later line. */
  hear(listener: (line: string) => void): void;
  /** kill -9; resolves when it has ended and all it said was heard. */
  kill(): Promise<void>;
}

interface Wish {
  /** A size no file of it may outgrow, in blocks of 512 bytes. */
  readonly blocks?: number;
  /** A user without rights over the folder. */
  readonly user?: number;
}

/** Starts a script beside this file, and waits for its first line. */
export async function startScript(name: string, args: readonly string[], wish: Wish = {}): Promise<Running> {
  const script = builtScript(name) ?? fileURLToPath(new URL(`${name}.ts`, import.meta.url));
  const node = [...(script.endsWith(".ts") ? ["--import", "tsx"] : []), script, ...args];
  const [program, command] =
    wish.blocks === undefined
      ? [process.execPath, node]
      : ["sh", ["-c", `ulimit -f ${wish.blocks}; exec "$0" "$@"`, process.execPath, ...node]];
  const child = spawn(program, command, {
    stdio: ["ignore", "pipe", "inherit"],
    ...(wish.user === undefined ? {} : { uid: wish.user, gid: wish.user }),
  });
  const ended = once(child, "close");
  const lines = createInterface(child.stdout);
  const [first] = (await Promise.race([once(lines, "line"), ended.then(() => [])])) as string[];
  if (first === undefined) throw new Error(`The ${name} of the ordeal ended before it said anything.`);
  return {
    first,
    hear: (listener) => void lines.on("line", listener),
    kill: async () => {
      child.kill("SIGKILL");
      await ended;
    },
  };
}

/** The script as built, which starts in a third of the time; null, run from the sources: it is not built, or older than they are. */
function builtScript(name: string): string | null {
  const here = fileURLToPath(new URL(".", import.meta.url));
  if (import.meta.url.endsWith(".js")) return join(here, `${name}.js`);
  const house = join(here, "..", "..");
  const stamp = statSync(join(house, "dist", ".built"), { throwIfNoEntry: false });
  const isFresh = stamp && SOURCES.every((folder) => newest(join(house, folder)) <= stamp.mtimeMs);
  return isFresh ? join(house, "dist", "scripts", "ordeal", `${name}.js`) : null;
}

/** What a script of the ordeal may run. */
const SOURCES = ["src/core", "src/edge", "src/apps/server", "scripts/ordeal"];
const newest = (folder: string): number =>
  readdirSync(folder, { recursive: true, encoding: "utf8" }).reduce(
    (latest, name) => Math.max(latest, statSync(join(folder, name)).mtimeMs),
    0,
  );

/** The server of a campaign's folder.   @param url the database its log is in, where it is in one */
export const startServer = (folder: string, url?: string, wish: Wish = {}): Promise<Running> =>
  startScript("server", url === undefined ? [folder] : [folder, url], wish);
