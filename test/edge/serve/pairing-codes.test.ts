import { describe, expect, test } from "vitest";
import { pairingCodes } from "../../../src/edge/serve/pairing-codes.ts";
import { NOON } from "../../core/log/some-events.ts";

const tablet = { device: "tablet-1", role: "boxer", person: null } as const;
const WRONG = "AAAAAAAA";
const MINUTE = 60_000;

describe("a stranger who tries codes", () => {
  test("bars their own address and voids nobody's code", () => {
    const codes = pairingCodes();
    const { code } = codes.make(tablet, NOON);
    for (let n = 0; n < 6; n++) expect(codes.use(WRONG, "10.0.0.66", NOON)).toBeNull();
    expect(codes.use(code, "10.0.0.66", NOON)).toBe("wait");
    expect(codes.use(code, "10.0.0.7", NOON)).toEqual(tablet);
  });

  test("with every address of a house's network bars nobody else", () => {
    const codes = pairingCodes();
    const { code } = codes.make(tablet, NOON);
    for (let host = 1; host < 254; host++)
      for (let n = 0; n < 7; n++) codes.use(WRONG, `192.168.1.${host}`, NOON);
    expect(codes.use(code, "192.168.1.254", NOON)).toEqual(tablet);
  });

  test("with many more has two thousand tries in ten minutes, of sixteen letters to the eighth", () => {
    const codes = pairingCodes();
    let tried = 0;
    for (let host = 0; host < 3000; host++) if (codes.use(WRONG, `host-${host}`, NOON) === null) tried++;
    expect(tried).toBe(2000);
    const { code } = codes.make(tablet, NOON + 5 * MINUTE);
    expect(codes.use(code, "10.0.0.7", NOON + 5 * MINUTE), "the door is shut, the code not void").toBe(
      "wait",
    );
    expect(codes.use(code, "10.0.0.7", NOON + 10 * MINUTE)).toEqual(tablet);
  });
});
