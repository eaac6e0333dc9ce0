import fc from "fast-check";
import { expect, test } from "vitest";
import { LeftOut } from "../../../src/edge/intake/loggers/left-out.ts";
import { ReadingStore } from "../../../src/edge/intake/loggers/reading-store.ts";
import { RowScanner, type ScanPlan } from "../../../src/edge/intake/loggers/row-scanner.ts";

const PLAN: ScanPlan = {
  delimiter: 59,
  rowEnd: 10,
  firstRowLine: 2,
  columns: { time: 0, temperature: 2, relHum: 3 },
  counted: null,
  isPartOfDay: false,
  isHourEnding: false,
  settledMark: null,
  isDecimalSplit: false,
  sensor: null,
  quantities: null,
  isHeading: () => false,
};
const TEXT = [
  "\uFEFFtime;note;temp;rh",
  "2026-06-02 08:00;;25,4;59,5",
  '2026-06-02 09:00;"door; open\nfor ""staff""";25,6;58',
  "",
  '"2026-06-02 10:00";;" 26,1 ";57,25;;;a long tail of cells that nobody needs; and one more; and one more',
  '2026-06-02 11:00;"never closed;26,2;57',
  "not a time;;1;2",
  "2026-06-02 12:00;;---;56\r",
  "2026-06-02 13:00;;26,4",
].join("\n");

function scanned(pieces: readonly Uint8Array[]): unknown {
  const [store, leftOut] = [new ReadingStore(2), new LeftOut()];
  const scanner = new RowScanner(PLAN, store, leftOut);
  for (const piece of pieces) scanner.see(piece);
  scanner.end();
  const { size } = store;
  return {
    time: [...store.time.subarray(0, size)].map((ms) => ms / 3_600_000),
    line: [...store.line.subarray(0, size)],
    warm: [...store.temperature.subarray(0, size)],
    damp: [...store.second.subarray(0, size)],
    leftOut: leftOut.all(),
  };
}

test("rows are cut, trimmed and counted", () => {
  expect(scanned([Buffer.from(TEXT)])).toEqual({
    time: [8, 9, 10, 11, 12, 13],
    line: [2, 3, 6, 7, 9, 10],
    warm: [25.4, 25.6, 26.1, 26.2, Number.NaN, 26.4],
    damp: [59.5, 58, 57.25, 57, 56, Number.NaN],
    leftOut: [{ reason: "time-unreadable", count: 1, lines: [8], example: "not a time;;1;2" }],
  });
});

test("it makes no difference where the pieces of a file are cut", () => {
  const bytes = Buffer.from(TEXT);
  const whole = scanned([bytes]);
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer({ min: 1, max: bytes.length - 1 }), { maxLength: 60 }), (cuts) => {
      const at = [0, ...cuts.sort((a, b) => a - b), bytes.length];
      const pieces = at.slice(1).map((end, i) => bytes.subarray(at[i], end));
      expect(scanned(pieces)).toEqual(whole);
    }),
    { numRuns: 500 },
  );
});
