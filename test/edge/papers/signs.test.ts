import { describe, expect, test } from "vitest";
import { qrSvg } from "../../../src/edge/papers/qr.ts";
import { SIGN_CODES, signSays, signSvg } from "../../../src/edge/papers/signs.ts";

describe("safety signs", () => {
  // ISO 3864-1: shape and colour of each family; the letters are those of ISO 7010.
  const families: Readonly<Record<string, RegExp>> = {
    W: /<path d="M50 9 L93.5 86 L6.5 86 Z" fill="#f9b800"/, // triangle on yellow
    M: /<circle cx="50" cy="50" r="49" fill="#005387"/, // blue disc
    P: /<circle cx="50" cy="50" r="44.5" fill="none" stroke="#b02318"/, // red ring
    E: /<rect[^>]+fill="#237f52"/, // green square
    F: /<rect[^>]+fill="#b02318"/, // red square
  };
  test.each(SIGN_CODES)("%s has the frame of its family and says what it means", (code) => {
    expect(signSvg(code)).toMatch(families[code.charAt(0)] ?? /^$/);
    expect(signSays(code)).toMatch(/^[A-Z][a-z :]+$/);
  });
  test("a prohibition carries its bar over the figure, so that it is read in black and white too", () => {
    expect(signSvg("P003")?.indexOf("M19 19 L81 81")).toBeGreaterThan(
      signSvg("P003")?.indexOf("#1a1a1a") ?? Infinity,
    );
  });
  test("a code without a drawing gives null", () => {
    expect(signSvg("W012")).toBeNull();
    expect(signSvg("nonsense")).toBeNull();
  });
});

test("a short number makes the smallest QR code that bears level Q, with four white modules round it", () => {
  // ISO/IEC 18004: version 1 is 21 modules wide and holds 16 alphanumeric characters at level Q
  expect(qrSvg("LDG-0042")).toContain('viewBox="0 0 29 29"');
  expect(qrSvg("LDG-0042")).toMatch(/d="M4 4h7v1h-7z/); // the upper edge of the first finder pattern
});
