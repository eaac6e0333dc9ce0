import { describe, expect, test } from "vitest";
import { seeded } from "../../../src/core/plan/chance.ts";
import { type ClockRow, type DayFrame, layDay } from "../../../src/core/plan/day-clock.ts";
import type { DayPiece } from "../../../src/core/plan/day-order.ts";

/** 75 min on and 30 min off: filtering mask without valve, DGUV 112-190, as kept in `data/norms.json` (`p-ffp-novalve`).
 *  Two hours at a stretch: Armour-Jones 1997 (`p-block`). Changing and washing: norms `s-…`, common practice, no source. */
const FRAME: DayFrame = {
  opens: 8 * 60,
  briefing: 30,
  lunch: { from: 12 * 60, by: 13 * 60, minutes: 45 },
  changeIn: 20,
  endOfSession: 53,
  changeOut: 10,
  wipeDown: 20,
  maskMinutes: { value: 75, source: "DGUV 112-190" },
  maskBreakMinutes: { value: 30, source: "DGUV 112-190" },
  stretchMinutes: { value: 120, source: "Armour-Jones 1997" },
};
const piece = (given: Partial<DayPiece>): DayPiece => ({
  item: "A",
  act: "clean",
  station: "clean bench",
  dirt: 0,
  exposed: false,
  minutes: 10,
  changeOver: 0,
  due: null,
  ...given,
});
const mouldy = (minutes: number, changeOver = 0): DayPiece =>
  piece({ dirt: 3, exposed: true, minutes, changeOver });
const told = (rows: readonly ClockRow[]): string[] =>
  rows.map(({ from, to, kind, goesOn }) => `${clock(from)}-${clock(to)} ${kind}${goesOn ? ", goes on" : ""}`);
const clock = (minutes: number): string =>
  `${Math.floor(minutes / 60)}.${String(minutes % 60).padStart(2, "0")}`;

/** Every rule a laid day breaks, told again from the rows alone. */
function brokenRules(rows: readonly ClockRow[], pieces: readonly DayPiece[], frame: DayFrame): string[] {
  const broken: string[] = [];
  const limit = Math.min(frame.maskMinutes.value, frame.stretchMinutes.value);
  let worn = 0;
  let off = Number.POSITIVE_INFINITY;
  rows.forEach((row, at) => {
    if (row.from !== (rows[at - 1]?.to ?? frame.opens)) broken.push(`a hole before ${clock(row.from)}`);
    const masked =
      row.kind === "end of session" || (row.piece !== null && (pieces[row.piece]?.exposed ?? false));
    if (masked && off >= frame.maskBreakMinutes.value) worn = 0;
    if (masked) worn += row.to - row.from;
    off = masked ? 0 : off + row.to - row.from;
    if (worn > limit) broken.push(`${worn} min of wear at ${clock(row.to)}`);
    if (row.kind === "lunch" && (row.from < (frame.lunch?.from ?? 0) || row.from > (frame.lunch?.by ?? 0)))
      broken.push(`lunch at ${clock(row.from)}`);
  });
  const lunches = rows.filter(({ kind }) => kind === "lunch").length;
  const ends = rows.at(-1)?.to ?? frame.opens;
  if (frame.lunch && lunches !== 1 && ends > frame.lunch.by) broken.push(`${lunches} lunches`);
  const seen = rows.flatMap(({ piece: at }) => (at === null ? [] : [at]));
  if (seen.some((one, at) => one < (seen[at - 1] ?? 0))) broken.push("pieces out of order");
  const work = rows
    .filter(({ kind }) => kind === "work" || kind === "change-over" || kind === "wipe-down")
    .reduce((sum, { from, to }) => sum + to - from, 0);
  const least = pieces.reduce((sum, { minutes }) => sum + minutes, 0);
  if (work < least - 1) broken.push(`${least - work} min of work lost`);
  return broken;
}

describe("a day in the clock", () => {
  test("protection goes on once, the mask comes off after 75 min for 30, and washing ends the session", () => {
    expect(told(layDay([piece({ minutes: 60 }), mouldy(60, 6), mouldy(50, 6)], FRAME))).toEqual([
      "8.00-8.30 briefing",
      "8.30-9.30 work",
      "9.30-9.50 change in",
      "9.50-10.44 work",
      "10.44-10.50 change-over",
      "10.50-11.20 mask break",
      "11.20-12.04 work",
      "12.04-12.10 change-over",
      "12.10-12.55 lunch",
      "12.55-13.48 end of session",
      "13.48-13.58 change out",
    ]);
  });

  test("a piece longer than the mask may be worn is cut at the limit, and the break names where the limit comes from", () => {
    const rows = layDay([mouldy(117)], { ...FRAME, lunch: null });
    expect(told(rows).slice(2, 5)).toEqual([
      "8.50-10.05 work, goes on",
      "10.05-10.35 mask break",
      "10.35-11.17 work",
    ]);
    expect(rows[3]?.limit?.source).toBe("DGUV 112-190");
  });

  test("in a hood, worn without limit, two hours at a stretch are still the most", () => {
    const hood = {
      ...FRAME,
      lunch: null,
      maskMinutes: { value: 1440, source: "DGUV 112-190: powered hood" },
    };
    const rows = layDay([mouldy(150)], hood);
    expect(told(rows).slice(2, 4)).toEqual(["8.50-10.50 work, goes on", "10.50-11.20 mask break"]);
    expect(rows[3]?.limit?.source).toBe("Armour-Jones 1997");
  });

  test("red rot worked without a mask is wiped down before cleaner work and before going home", () => {
    const dirty = piece({ dirt: 2, minutes: 30, changeOver: 6 });
    expect(told(layDay([dirty, piece({})], FRAME)).slice(1)).toEqual([
      "8.30-8.54 work",
      "8.54-9.00 change-over",
      "9.00-9.20 wipe-down",
      "9.20-9.30 work",
    ]);
    expect(layDay([dirty], FRAME).at(-1)?.kind).toBe("wipe-down");
  });

  test("clean work between two sessions counts as the break when it lasts as long", () => {
    const rows = layDay([mouldy(70), piece({ minutes: 40 }), mouldy(70)], {
      ...FRAME,
      lunch: null,
      endOfSession: 0,
    });
    expect(rows.filter(({ kind }) => kind === "mask break")).toEqual([]);
  });

  test("nothing to do is a day of the briefing alone", () => {
    expect(told(layDay([], FRAME))).toEqual(["8.00-8.30 briefing"]);
  });

  test("on 200 invented days no rule is broken", () => {
    for (let seed = 1; seed <= 200; seed++) {
      const { pieces, frame } = inventedDay(seed, 1 + (seed % 12));
      expect(brokenRules(layDay(pieces, frame), pieces, frame), `seed ${seed}`).toEqual([]);
    }
  });

  test("on 60 small days no choice of breaks between pieces brings anyone home sooner or cuts fewer pieces", () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { pieces, frame } = inventedDay(seed, 1 + (seed % 4));
      const rows = layDay(pieces, frame);
      const lunch = rows.find(({ kind }) => kind === "lunch")?.from ?? 0;
      const late = Math.max(0, lunch - (frame.lunch?.by ?? lunch));
      const given = [late, rows.at(-1)?.to ?? 0, rows.filter(({ goesOn }) => goesOn).length];
      const best = everyChoice(rows, pieces, frame);
      expect(less(best, given), `seed ${seed}: ${best} against ${given}`).toBe(false);
    }
  });
});

function inventedDay(seed: number, size: number): { pieces: DayPiece[]; frame: DayFrame } {
  const draw = seeded(seed);
  const between = (low: number, high: number): number => low + Math.floor(draw() * (high - low + 1));
  const pieces = Array.from({ length: size }, () => {
    const dirt = between(0, 4) as DayPiece["dirt"];
    return piece({ dirt, exposed: dirt >= 3, minutes: between(4, 90), changeOver: dirt >= 2 ? 4 : 0 });
  });
  if (draw() < 0.7) pieces.sort((a, b) => a.dirt - b.dirt);
  const lunch = draw() < 0.3 ? null : { from: 720, by: 720 + between(0, 60), minutes: between(20, 60) };
  const limit = { value: between(40, 100), source: "invented" };
  return { pieces, frame: { ...FRAME, lunch, maskMinutes: limit } };
}

/** Lateness of lunch, home and cuts of the best day over every set of seams with a break or lunch, each walked minute by minute. */
function everyChoice(laid: readonly ClockRow[], pieces: readonly DayPiece[], frame: DayFrame): number[] {
  const spans = joined(laid, pieces);
  let best = [Number.POSITIVE_INFINITY];
  for (let breaks = 0; breaks < 2 ** spans.length; breaks++)
    for (let lunchAt = 0; lunchAt <= spans.length; lunchAt++) {
      const day = walked(spans, breaks, lunchAt, frame);
      if (day && less(day, best)) best = day;
    }
  return best;
}

const less = (a: readonly number[], b: readonly number[]): boolean => {
  const at = a.findIndex((value, n) => value !== b[n]);
  return at >= 0 && (a[at] as number) < (b[at] ?? 0);
};

/** The spans of a laid day, its pauses taken out and what they cut joined again. */
function joined(
  rows: readonly ClockRow[],
  pieces: readonly DayPiece[],
): { minutes: number; masked: boolean }[] {
  const spans: { minutes: number; masked: boolean }[] = [];
  let cut = false;
  for (const { kind, piece: at, from, to, goesOn } of rows) {
    if (kind === "lunch" || kind === "mask break") continue;
    const last = spans.at(-1);
    if (cut && last) last.minutes += to - from;
    else
      spans.push({
        minutes: to - from,
        masked: kind === "end of session" || (at !== null && pieces[at]?.exposed === true),
      });
    cut = goesOn;
  }
  return spans;
}

function walked(
  spans: readonly { minutes: number; masked: boolean }[],
  breaks: number,
  lunchAt: number,
  frame: DayFrame,
): number[] | null {
  const [limit, rest] = [
    Math.min(frame.maskMinutes.value, frame.stretchMinutes.value),
    frame.maskBreakMinutes.value,
  ];
  let [now, worn, off, cuts] = [frame.opens, 0, rest, 0];
  let eaten = frame.lunch === null;
  const pause = (minutes: number): void => {
    now += minutes;
    off += minutes;
  };
  let late = 0;
  const eat = (): void => {
    late = Math.max(0, now - (frame.lunch?.by ?? 0));
    pause(frame.lunch?.minutes ?? 0);
    eaten = true;
  };
  for (const [at, span] of spans.entries()) {
    if (at === lunchAt) {
      if (eaten || now < (frame.lunch?.from ?? 0)) return null;
      eat();
    }
    if ((breaks >> at) & 1) {
      if (!span.masked || off >= rest) return null;
      pause(rest);
    }
    for (let minute = 0; minute < span.minutes; minute++) {
      const hungry = !eaten && now >= (frame.lunch?.by ?? 0);
      if (hungry) eat();
      if (span.masked && off >= rest) worn = 0;
      const spentMask = span.masked && worn >= limit;
      if (spentMask) {
        // At the limit lunch, where it is time for it, may stand for the break: both are tried by the caller's lunchAt and by this.
        if (!eaten && now >= (frame.lunch?.from ?? 0) && (frame.lunch?.minutes ?? 0) >= rest) eat();
        else pause(rest);
        if (!eaten && now >= (frame.lunch?.by ?? 0)) eat();
        worn = 0;
      }
      if ((hungry || spentMask) && minute > 0) cuts++;
      if (span.masked) {
        worn++;
        off = 0;
      } else off++;
      now++;
    }
  }
  return [late, now, cuts];
}
