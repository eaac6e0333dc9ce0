import { randomInt } from "node:crypto";
import type { Admitted } from "./device-book.ts";

/** Letters that nobody takes for another or for a figure, spoken or written by hand. */
const LETTERS = "ACDEFHJKMNPRTWXY";
const LENGTH = 8;
const LASTS_MS = 600_000;
/** Wrong tries of one address in ten minutes. A wrong try never touches a code: whoever passes by must not be able to void the lead's. */
const MOST_TRIES = 6;
/**
 * Wrong tries of all addresses together in ten minutes. There are 16^8 = 4.3 thousand million codes; with ten of them open, two thousand tries
 * hit one in 10 × 2,000 / 4.3e9, once in some 200,000 such stretches of ten minutes. The 254 addresses of a house's network have 1,524
 * tries, so that they cannot bar the door to others.
 */
const MOST_OF_ALL = 2000;

export interface PairingCode {
  readonly code: string;
  /** ms since 1970. */
  readonly until: number;
}

/** Short codes that let a device in, once. They are held in memory alone: a server that starts again knows none. */
export interface PairingCodes {
  make(admitted: Admitted, now: number): PairingCode;
  /** Whom the code lets in; null: no such code, or no longer. `wait`: there were too many wrong tries from this address, or from all.
   *  A new code gives every address its tries back. */
  use(code: string, address: string, now: number): Admitted | null | "wait";
}

export function pairingCodes(): PairingCodes {
  const open = new Map<string, { readonly admitted: Admitted; readonly until: number }>();
  const tries = new Map<string, number>();
  let [all, since] = [0, 0];

  function isBarred(address: string, now: number): boolean {
    if (now - since >= LASTS_MS) {
      tries.clear();
      [all, since] = [0, now];
    }
    return all >= MOST_OF_ALL || (tries.get(address) ?? 0) >= MOST_TRIES;
  }

  return {
    make: (admitted, now) => {
      tries.clear();
      for (const [code, { admitted: before, until }] of open)
        if (until <= now || before.device === admitted.device) open.delete(code);
      const code = Array.from({ length: LENGTH }, () => LETTERS.charAt(randomInt(LETTERS.length))).join("");
      open.set(code, { admitted, until: now + LASTS_MS });
      return { code, until: now + LASTS_MS };
    },
    use: (said, address, now) => {
      if (isBarred(address, now)) return "wait";
      const code = said.toUpperCase().replace(/[^A-Z]/g, "");
      const found = open.get(code);
      open.delete(code);
      if (found && now < found.until) return found.admitted;
      tries.set(address, (tries.get(address) ?? 0) + 1);
      all++;
      return null;
    },
  };
}

/** As it is shown: `KWRT-PXHA`. */
export const spelled = (code: string): string => `${code.slice(0, LENGTH / 2)}-${code.slice(LENGTH / 2)}`;
