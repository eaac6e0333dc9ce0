import { existsSync } from "node:fs";

const PLACES = [
  process.env.CHROME_PATH,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:/Program Files/Google/Chrome/Application/chrome.exe",
];

/** The first Chrome or Chromium on this machine; null: none found. */
export const browserPath = (): string | null =>
  PLACES.find((path): path is string => path !== undefined && path !== "" && existsSync(path)) ?? null;

/** No first-run talk, no network of its own; the sandbox is off because containers run as root. */
export const BROWSER_FLAGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
