import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { canonicalJson, isJson, type Json } from "../../../src/core/log/canonical-json.ts";

/** Bits of a double → how it is written. Source: RFC 8785 (2020) appendix B, as tabled in lattice-substrate/json-canon. */
const NUMBERS: readonly (readonly [string, string])[] = [
  ["0000000000000000", "0"],
  ["8000000000000000", "0"],
  ["0000000000000001", "5e-324"],
  ["7fefffffffffffff", "1.7976931348623157e+308"],
  ["4340000000000000", "9007199254740992"],
  ["4430000000000000", "295147905179352830000"],
  ["44b52d02c7e14af5", "9.999999999999997e+22"],
  ["44b52d02c7e14af6", "1e+23"],
  ["444b1ae4d6e2ef4f", "999999999999999900000"],
  ["444b1ae4d6e2ef50", "1e+21"],
  ["3eb0c6f7a0b5ed8c", "9.999999999999997e-7"],
  ["3eb0c6f7a0b5ed8d", "0.000001"],
  ["41b3de4355555557", "333333333.33333343"],
  ["becbf647612f3696", "-0.0000033333333333333333"],
  ["43143ff3c1cb0959", "1424953923781206.2"],
];
const doubleOf = (bits: string): number => Buffer.from(bits, "hex").readDoubleBE();

describe("canonical JSON", () => {
  test.each(NUMBERS)("the double %s is written %s", (bits, written) => {
    expect(canonicalJson(doubleOf(bits))).toBe(written);
  });

  test("the sample of the scheme's own page comes out letter for letter", () => {
    // Source: README of cyberphone/json-canonicalization, sample input and expected output; the same sample stands in RFC 8785 section 3.2.2.
    const sample = String.raw`{"numbers":[1E30,4.50,6,2e-3,0.000000000000000000000000001],"escaping":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","other":[null,true,false]}`;
    expect(canonicalJson(JSON.parse(sample) as Json)).toBe(
      String.raw`{"escaping":"€$\u000f\nA'B\"\\\\\"/","numbers":[1e+30,4.5,6,0.002,1e-27],"other":[null,true,false]}`,
    );
  });

  test("names are sorted by their UTF-16 units", () => {
    // Source: RFC 8785 section 3.2.3, the sorting example.
    const names = ["\u20ac", "\r", "\ufb33", "1", "\ud83d\ude00", "\u0080", "\u00f6"];
    const sorted = ["\r", "1", "\u0080", "\u00f6", "\u20ac", "\ud83d\ude00", "\ufb33"];
    const written = canonicalJson(Object.fromEntries(names.map((name) => [name, 0])));
    expect(written).toBe(`{${sorted.map((name) => `${JSON.stringify(name)}:0`).join(",")}}`);
  });

  test("it reads back as what it was, and is the same however the value was put together", () =>
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
        const text = canonicalJson(value as Json);
        expect(canonicalJson(JSON.parse(text) as Json)).toBe(text);
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)));
      }),
    ));

  test.each([
    [Number.NaN],
    [undefined],
    [{ a: undefined }],
    ["\ud800"],
    [{ "\udc00": 1 }],
    [() => 1],
    [[1n]],
  ])("%s is not JSON that reads the same everywhere", (value) => expect(isJson(value)).toBe(false));
});
