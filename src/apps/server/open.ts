import { spawn } from "node:child_process";

/**
 * Opens the address in the reader's own browser, and says whether it tried. Not in CI, without a display, or when
 * LEAFWARD_NO_OPEN is set; a browser that does not start is no fault, the address was printed.
 */
export function openInBrowser(address: string, environment: NodeJS.ProcessEnv = process.env): boolean {
  const command = commandFor(process.platform, environment);
  if (command === null) return false;
  const [program, ...args] = command;
  try {
    const opener = spawn(program, [...args, address], { stdio: "ignore", detached: true });
    opener.on("error", () => {});
    opener.unref();
    return true;
  } catch {
    return false;
  }
}

function commandFor(platform: NodeJS.Platform, environment: NodeJS.ProcessEnv): [string, ...string[]] | null {
  if (environment.CI || environment.LEAFWARD_NO_OPEN) return null;
  if (platform === "darwin") return ["open"];
  if (platform === "win32") return ["rundll32", "url.dll,FileProtocolHandler"]; // no shell, so nothing to quote
  return environment.DISPLAY || environment.WAYLAND_DISPLAY ? ["xdg-open"] : null;
}
