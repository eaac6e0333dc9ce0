// Makes a fresh or stale clone ready: installs the locked packages, builds what is out of date, finds a browser for the tests.
// No dependency, any system. Used by `npm start`, `npm test`, `npm run bench` and the `leafward` command.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const at = (...parts) => join(root, ...parts);
const read = (path) => (existsSync(path) ? readFileSync(path, "utf8").trim() : "");

function refuseOldNode() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(
    `Leafward needs Node.js 20.19 or newer; this is ${process.version}. Install a newer Node.js and try again.`,
  );
  process.exit(1);
}

function hash(...parts) {
  const sum = createHash("sha256");
  for (const part of parts) sum.update(part).update("\0");
  return sum.digest("hex");
}

function npm(...args) {
  const cli = process.env.npm_execpath; // set whenever npm runs a script; no shell, so no quoting trouble on Windows
  const env = { ...process.env };
  delete env.NODE_ENV; // NODE_ENV=production would drop the build tools
  const stdio = ["ignore", 2, 2]; // standard output stays free for the answer of the command that called us
  const run =
    cli && /\.c?js$/.test(cli) && !/npx-cli/.test(cli)
      ? spawnSync(process.execPath, [cli, ...args], { cwd: root, stdio, env })
      : spawnSync(process.platform === "win32" ? "npm.cmd" : "npm", args, {
          cwd: root,
          stdio,
          env,
          shell: process.platform === "win32",
        });
  if (run.status !== 0) process.exit(run.status ?? 1);
}

/** One run at a time: making a directory is atomic on every file system; a lock whose owner is gone is taken over. */
function takeLock() {
  const lock = at(".ready-lock");
  const ownerGone = () => {
    const pid = Number(read(join(lock, "pid")));
    if (!pid) return Date.now() - (statSync(lock, { throwIfNoEntry: false })?.mtimeMs ?? Date.now()) > 5000;
    try {
      process.kill(pid, 0);
      return false;
    } catch (error) {
      return error.code === "ESRCH";
    }
  };
  for (let waited = false; ; ) {
    try {
      mkdirSync(lock);
      break;
    } catch (error) {
      if (error.code !== "EEXIST") throw error;
    }
    if (ownerGone()) rmSync(lock, { recursive: true, force: true });
    else {
      if (!waited) console.error("Waiting for another run that is making this folder ready …");
      waited = true;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 500);
    }
  }
  writeFileSync(join(lock, "pid"), String(process.pid));
  process.on("exit", () => rmSync(lock, { recursive: true, force: true }));
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.on(signal, () => process.exit(130));
}

function installPackages() {
  // native addons are built for one Node ABI, system and processor, so those belong to the key
  const want = hash(read(at("package-lock.json")), process.versions.modules, process.platform, process.arch);
  const stamp = at("node_modules", ".ready");
  if (read(stamp) === want) return;
  console.error("Installing the locked packages …");
  npm("ci", "--include=dev", "--no-audit", "--no-fund", "--prefer-offline");
  writeFileSync(stamp, want);
}

function sourceFiles() {
  const files = ["package-lock.json", "tsconfig.json", "tsconfig.build.json", "vite.config.ts"].map((name) =>
    at(name),
  );
  const walk = (folder) => {
    for (const entry of readdirSync(folder, { withFileTypes: true }).sort((a, b) =>
      a.name < b.name ? -1 : 1,
    )) {
      const path = join(folder, entry.name);
      if (entry.isDirectory()) walk(path);
      else files.push(path);
    }
  };
  for (const folder of ["src", "bench", "data"]) if (existsSync(at(folder))) walk(at(folder));
  return files;
}

function buildSources() {
  const want = hash(...sourceFiles().map((path) => `${path.slice(root.length)}:${read(path)}`));
  const stamp = at("dist", ".built");
  if (read(stamp) === want) return;
  console.error("Building …");
  rmSync(at("dist"), { recursive: true, force: true });
  npm("run", "--silent", "build");
  mkdirSync(at("dist"), { recursive: true });
  writeFileSync(stamp, want);
}

const browsers = [
  process.env.CHROME_PATH,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:/Program Files/Google/Chrome/Application/chrome.exe",
];

function findBrowser() {
  if (browsers.some((path) => path && existsSync(path))) return;
  if (existsSync("/usr/bin/apt-get") && process.getuid?.() === 0) {
    console.error("Installing Chromium for the browser tests …");
    spawnSync("apt-get", ["update", "-qq"], { stdio: ["ignore", "ignore", 2] });
    spawnSync("apt-get", ["install", "-y", "-qq", "chromium"], {
      stdio: ["ignore", "ignore", 2],
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    });
    return;
  }
  console.error(
    "No Chrome or Chromium found: set CHROME_PATH to one; the browser tests will say that they were skipped.",
  );
}

refuseOldNode();
takeLock();
installPackages();
if (process.argv.includes("build")) buildSources();
if (process.argv.includes("browser")) findBrowser();
