import { randomInt } from "node:crypto";
import type { Admitted } from "./device-book.ts";

/** Letters that nobody takes for another or for a figure, spoken or written by hand. */
const LETTERS = "ACDEFHJKMNPRTWXY";
const LENGTH = 8;
const LASTS_MS = 600_000;
const MOST_TRIES = 5;

export interface PairingCode {
  readonly code: string;
  /** ms since 1970. */
  readonly until: number;
}

/** Short codes that let a device in, once. They are held in memory alone: a server that starts again knows none. */
export interface PairingCodes {
  make(admitted: Admitted, now: number): PairingCode;
  /** Whom the code lets in; null: no such code, or no longer. After five wrong tries every code is void. */
  use(code: string, now: number): Admitted | null;
}

export function pairingCodes(): PairingCodes {
  const open = new Map<string, { readonly admitted: Admitted; readonly until: number }>();
  let tries = 0;
  return {
    make: (admitted, now) => {
      tries = 0;
      for (const [code, { admitted: before, until }] of open)
        if (until <= now || before.device === admitted.device) open.delete(code);
      const code = Array.from({ length: LENGTH }, () => LETTERS.charAt(randomInt(LETTERS.length))).join("");
      open.set(code, { admitted, until: now + LASTS_MS });
      return { code, until: now + LASTS_MS };
    },
    use: (said, now) => {
      const code = said.toUpperCase().replace(/[^A-Z]/g, "");
      const found = open.get(code);
      open.delete(code);
      if (found && now < found.until) return found.admitted;
      tries++;
      if (tries >= MOST_TRIES) open.clear();
      return null;
    },
  };
}

/** As it is shown: `KWRT-PXHA`. */
export const spelled = (code: string): string => `${code.slice(0, LENGTH / 2)}-${code.slice(LENGTH / 2)}`;
