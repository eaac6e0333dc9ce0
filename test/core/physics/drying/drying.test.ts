import { describe, expect, test } from "vitest";
import { leakMass } from "../../../../src/core/physics/bags/bags.ts";
import { relHumFromGelContent } from "../../../../src/core/physics/bags/gel-isotherms.ts";
import {
  brickChange,
  planeSheetChange,
  planeSheetChangeBehindFilm,
} from "../../../../src/core/physics/drying/diffusion.ts";
import {
  type ClosedBag,
  DryingRun,
  dryingCourse,
  FINE,
  hoursUntilRelHum,
  leakFromEnclosure,
  QUICK,
  type Room,
} from "../../../../src/core/physics/drying/drying.ts";
import {
  bookPaper,
  closedBook,
  type DryingBody,
  fannedBook,
  leafStack,
  leatherBoard,
  looseLeaves,
  narrowingDepth,
} from "../../../../src/core/physics/drying/drying-body.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import type { Isotherm } from "../../../../src/core/physics/sorption/isotherm.ts";
import { ISOTHERMS } from "../../../../src/core/physics/sorption/sorption.ts";
import { CAUTIONS } from "../../../../src/core/say/cautions/drying.ts";
import { CAUTIONS as SORPTION } from "../../../../src/core/say/cautions/sorption.ts";
import { between, holdsForAll } from "../holds-for-all.ts";
import { twoWayMoisture } from "./two-ways-out.ts";

const DAYS = [1, 7, 30, 60, 90, 180];
const hoursOf = (days: readonly number[]): number[] => days.map((day) => 24 * day);
const octavo = { height: 0.24, width: 0.17, thickness: 0.04 };
const book = closedBook(octavo, bookPaper(20));
const room: Room = { kind: "room", relHum: 0.5 };
const bag: ClosedBag = {
  kind: "bag",
  airVolume: 0.005,
  gel: { dryMass: 0.25, relHum: 0.06 },
  leak: 4e-8,
  relHum: 0.7,
};

/** A curve that is a straight line: with it the model is the textbook's, of constant diffusivity. */
const straight: Isotherm = {
  material: "a straight line",
  moistureContentFromRelHum: (relHum) => 0.15 * relHum,
  relHumFromMoistureContent: (content) => content / 0.15,
  slope: () => 0.15,
  cautions: [],
};

const percentOf = (
  body: DryingBody,
  days: readonly number[],
  precision = FINE,
  at: Room | ClosedBag = room,
): number[] =>
  dryingCourse(body, 20, 0.85, at, hoursOf(days), precision).points.map(
    (point) => 100 * point.moistureContent,
  );

describe("the steps are fine enough", () => {
  const reference = percentOf(book, DAYS, { cells: 300, allowedError: 3e-9 });
  const off = (precision: typeof FINE): number =>
    Math.max(...percentOf(book, DAYS, precision).map((each, i) => Math.abs(each - (reference[i] ?? 0))));

  test("180 days of a closed book: mean moisture within 0.02 % of a fine run, on every day looked at", () => {
    expect(off(FINE)).toBeLessThan(0.02);
  });
  test("the quick setting of forecasts stays within 0.05 %", () => {
    expect(off(QUICK)).toBeLessThan(0.05);
  });
  test("half the cell width, a quarter of the error", () => {
    const [wide, half] = [12, 24].map((cells) => off({ cells, allowedError: 3e-8 }));
    expect((wide ?? 0) / (half ?? 1)).toBeGreaterThan(3);
    expect((wide ?? 0) / (half ?? 1)).toBeLessThan(5.5);
  });
  test("an eighth of the error allowed in a step, a smaller error at the end", () => {
    const fine = percentOf(book, [180], { cells: 20, allowedError: 1e-9 })[0] ?? 0;
    const errors = [8e-5, 1e-5, 1.25e-6].map((allowedError) =>
      Math.abs((percentOf(book, [180], { cells: 20, allowedError })[0] ?? 0) - fine),
    );
    expect(errors[2]).toBeLessThan(errors[0] ?? 0);
    expect(errors[1]).toBeLessThan(0.005);
    expect(errors[2]).toBeLessThan(0.001);
  });
});

describe("every gram is counted", () => {
  const balance = (body: DryingBody, at: Room | ClosedBag, start: number): number => {
    const run = new DryingRun(body, 20);
    run.start(start);
    run.place(at);
    const before = run.allWater;
    run.goOn(4321);
    return Math.abs(before - run.allWater - run.gone) / before;
  };
  test.each([
    ["a book in a room", book, room],
    ["a book in a bag with gel and a leak", book, bag],
    [
      "a book in a bag without gel",
      book,
      { kind: "bag", airVolume: 0.003, leak: 2e-7, relHum: 0.4 } satisfies ClosedBag,
    ],
    ["loose leaves in a draught", looseLeaves(octavo, 1e-4, bookPaper(20)), { ...room, film: 8e-8 }],
  ] as const)("%s: what is gone and what is left are what was there, to 1e-13", (_, body, at) => {
    expect(balance(body, at, 0.85)).toBeLessThan(1e-13);
  });
  test("in a tight bag gel gains what the book loses", () => {
    const run = new DryingRun(book, 20);
    run.start(0.8);
    run.place({ ...bag, leak: 0 });
    const before = run.allWater;
    run.goOn(3000);
    expect(run.gone).toBe(0);
    expect(Math.abs(run.allWater - before)).toBeLessThan(1e-15);
  });
  test("water is kept when the book is moved from room to bag to room", () => {
    const run = new DryingRun(book, 20);
    run.start(0.85);
    run.place(room);
    run.goOn(100);
    const before = run.water;
    run.place(bag);
    expect(run.water).toBe(before);
  });
});

describe("it agrees with what can be worked out otherwise", () => {
  const slab = { depth: 0.05, taper: 0, openArea: 1 };
  const diffusivity = 2e-10;
  const body: DryingBody = {
    ...book,
    ...slab,
    isotherm: straight,
    dryMass: 690 * 0.05,
    permeability: (diffusivity * 690 * 0.15) / 2338.8, // psat(20 °C), ASHRAE 2017 ch. 1 eq. 6
  };
  const share = (film: number, hours: number): number => {
    const point = dryingCourse(body, 20, 0.8, { kind: "room", relHum: 0.4, film }, [hours], {
      cells: 60,
      allowedError: 1e-7,
    }).points[0];
    return (0.8 * 0.15 - (point?.moistureContent ?? 0)) / (0.4 * 0.15);
  };
  test.each([200, 800, 2400])(
    "on a straight isotherm, the plane sheet of Crank after %d h, within 0.001",
    (hours) => {
      const fourier = (diffusivity * hours * 3600) / 0.05 ** 2;
      expect(Math.abs(share(1, hours) - planeSheetChange(fourier))).toBeLessThan(1e-3);
    },
  );
  test.each([0.5, 5])("and the same behind a film of Biot number %d", (biot) => {
    const film = (biot * body.permeability) / 0.05;
    const fourier = (diffusivity * 1000 * 3600) / 0.05 ** 2;
    expect(Math.abs(share(film, 1000) - planeSheetChangeBehindFilm(fourier, biot))).toBeLessThan(1e-3);
  });
  test.each([
    [0.12, 0.17, 0.005],
    [0.1, 0.1, 0.005],
    [0.05, 0.2, 0.01],
  ])(
    "on a straight isotherm, Newman's brick of %d m and %d m, within %d of the whole change",
    (a, b, within) => {
      const { taper, depth, openness } = narrowingDepth([a, b]);
      const block = { ...body, taper, depth, openArea: openness, dryMass: 690 };
      for (const hours of [100, 700, 3000, 9000]) {
        const at: Room = { kind: "room", relHum: 0.4, film: 1 };
        const [point] = dryingCourse(block, 20, 0.8, at, [hours], { cells: 80, allowedError: 1e-6 }).points;
        const ours = (0.8 * 0.15 - (point?.moistureContent ?? 0)) / (0.4 * 0.15);
        const fourier = (each: number): number => (diffusivity * hours * 3600) / each ** 2;
        const brick = brickChange([planeSheetChange(fourier(a)), planeSheetChange(fourier(b))]);
        expect(Math.abs(ours - brick)).toBeLessThan(within);
      }
    },
  );
  test.each([
    [0.12, 0.17],
    [0.1, 0.1],
    [0.08, 0.15],
    [0.05, 0.2],
  ])("a block open along %d m and %d m loses water as in two directions at once, within 0.06 %%", (a, b) => {
    const block = { ...book, ...blockOf(a, b) };
    const two = twoWayMoisture(
      block,
      a,
      b,
      { dryBulb: 20, start: 0.85, room: () => 0.5 },
      hoursOf([7, 30, 90, 180]),
    );
    percentOf(block, [7, 30, 90, 180]).forEach((each, i) =>
      expect(Math.abs(each - (two[i] ?? 0))).toBeLessThan(0.06),
    );
  });
  test("and so it does while the room swings between 38 and 62 %", () => {
    const swing = (hours: number): number => 0.5 + 0.12 * Math.cos((2 * Math.PI * hours) / 720);
    const hours = Array.from({ length: 400 }, (_, i) => 12 * i);
    const block = { ...book, ...blockOf(0.12, 0.17) };
    const two = twoWayMoisture(
      block,
      0.12,
      0.17,
      { dryBulb: 20, start: 0.85, room: swing },
      hoursOf([7, 30, 90, 180]),
    );
    const ours = percentOf(block, [7, 30, 90, 180], FINE, {
      kind: "room",
      relHum: { hours, relHums: hours.map(swing) },
    });
    ours.forEach((each, i) => expect(Math.abs(each - (two[i] ?? 0))).toBeLessThan(0.06));
  });
  test("gel and book come to rest where the balance of their water says", () => {
    // 1 kg of rag paper from 80 %, 0.15 kg of gel at 0.02 kg/kg, 5 l, no leak: 51.0 %, mass balance worked out by hand
    const thin = { ...looseLeaves(octavo, 1e-4, bookPaper(20)), dryMass: 1 };
    const gel = { dryMass: 0.15, relHum: relHumFromGelContent(0.02) };
    const at: ClosedBag = { kind: "bag", airVolume: 0.005, airRelHum: 0.8, gel, leak: 0, relHum: 0.5 };
    const rest = dryingCourse(thin, 20, 0.8, at, [2000]).points[0];
    expect(rest?.airRelHum).toBeCloseTo(0.51, 2);
    expect(rest?.equilibriumRelHum).toBeCloseTo(rest?.airRelHum ?? 0, 4);
  });
  test("wet boxes left closed in a dry room for 13 days hardly dry at the core", () => {
    // NARA, Kaplan and Ludwig 2003: 16.0 to 15.3 %, i.e. a twentieth; a box of files, 0.3 m along the leaves both ways
    const box = closedBook({ height: 0.3, width: 0.25, thickness: 0.12 }, bookPaper(25));
    const [point] = dryingCourse(box, 25, 0.95, { kind: "room", relHum: 0.12 }, [13 * 24]).points;
    expect((point?.coreRelHum ?? 0) / 0.95).toBeGreaterThan(0.95);
  });
  test("an empty bag fills through film and seams as its balance says", () => {
    const enclosure = { area: 0.4, permeance: 3e-4, volume: 0.005, airChangesPerDay: 0.5 };
    const inAnHour = leakMass(enclosure, { dryBulb: 20, relHum: 0.9 }, 0.5, 1 / 24);
    expect((leakFromEnclosure(enclosure, 20) * 2338.8 * 0.4) / inAnHour).toBeCloseTo(1, 4); // psat(20 °C)
  });
  test("a fanned book is days, a closed one is months: opening decides, not the room", () => {
    const until = (each: DryingBody, relHum: number): number =>
      hoursUntilRelHum(each, 20, 0.85, { kind: "room", relHum }, 0.55, 20_000) ?? Number.NaN;
    const fanned = until(fannedBook(octavo, 0.006, bookPaper(20)), 0.5);
    expect(fanned).toBeGreaterThan(12); // a day to a week in moving air: field fact, Cornell, as summarised
    expect(fanned).toBeLessThan(7 * 24);
    expect(until(book, 0.35)).toBeGreaterThan(10 * fanned);
  });
});

describe("it moves the way it must", () => {
  test("a damper room never dries a book sooner", () =>
    holdsForAll([between(0.2, 0.5), between(0.001, 0.04), between(0.6, 0.9)], (relHum, more, start) => {
      const until = (each: number): number =>
        hoursUntilRelHum(book, 20, start, { kind: "room", relHum: each }, 0.55, 60_000, QUICK) ?? 60_000;
      expect(until(relHum + more)).toBeGreaterThanOrEqual(until(relHum) * (1 - 1e-3));
    }));
  test("a thicker, a tighter, a damper item is never ready sooner", () => {
    const until = (each: DryingBody, start = 0.8): number =>
      hoursUntilRelHum(each, 20, start, room, 0.55, 90_000) ?? Number.NaN;
    const usual = until(book);
    expect(until(closedBook({ ...octavo, width: 0.21 }, bookPaper(20)))).toBeGreaterThan(usual);
    expect(until(closedBook(octavo, { ...bookPaper(20), airFraction: 0.05 }))).toBeGreaterThan(usual);
    expect(until(book, 0.9)).toBeGreaterThan(usual);
  });
  test("a drying book stays between start and room, dampest at the core, and never gains", () =>
    holdsForAll([between(0.2, 0.6), between(0.65, 0.95)], (relHum, start) => {
      const { points } = dryingCourse(book, 20, start, { kind: "room", relHum }, hoursOf([1, 10, 40, 160]));
      let before = Number.POSITIVE_INFINITY;
      for (const { profile, moistureContent } of points) {
        profile.forEach((cell, i) => {
          expect(cell.relHum).toBeGreaterThan(relHum - 1e-4);
          expect(cell.relHum).toBeLessThan(start + 1e-4);
          if (i > 0) expect(cell.relHum).toBeGreaterThan((profile[i - 1]?.relHum ?? 0) - 1e-6);
        });
        expect(moistureContent).toBeLessThan(before);
        before = moistureContent;
      }
    }));
  test("a dry book in a damp room takes water up", () => {
    const [point] = dryingCourse(book, 20, 0.4, { kind: "room", relHum: 0.7 }, [720]).points;
    expect(point?.equilibriumRelHum).toBeGreaterThan(0.45);
  });
  test("a book that stands in its own humidity does nothing", () => {
    const [point] = dryingCourse(book, 20, 0.57, { kind: "room", relHum: 0.57 }, [4000]).points;
    expect(point?.equilibriumRelHum).toBeCloseTo(0.57, 9);
  });
  test("a series of one value is a constant room", () => {
    const series: Room = { kind: "room", relHum: { hours: [0, 800, 2000], relHums: [0.5, 0.5, 0.5] } };
    expect(percentOf(book, [60], FINE, series)[0]).toBeCloseTo(percentOf(book, [60])[0] ?? 0, 2);
  });
  test("looking more often changes nothing", () => {
    const often = percentOf(
      book,
      Array.from({ length: 60 }, (_, i) => i + 1),
    ).at(-1);
    expect(often).toBeCloseTo(percentOf(book, [60])[0] ?? 0, 2);
  });
  test("a bag shows less than the book would after a rest while gel works", () => {
    const [point] = dryingCourse(book, 20, 0.85, bag, [240]).points;
    expect(point?.airRelHum).toBeLessThan((point?.equilibriumRelHum ?? 0) - 0.02);
  });
  test("the hour of a target is the hour at which the course gets there", () => {
    const hour = hoursUntilRelHum(book, 20, 0.85, room, 0.6, 20_000) ?? Number.NaN;
    const [point] = dryingCourse(book, 20, 0.85, room, [hour]).points;
    expect(point?.equilibriumRelHum).toBeCloseTo(0.6, 3);
  });
  test("a target below the room is never reached, and that is said as null", () => {
    expect(hoursUntilRelHum(book, 20, 0.8, { kind: "room", relHum: 0.6 }, 0.55, 30_000)).toBeNull();
  });
});

describe("shapes", () => {
  test("a plane sheet does not narrow, a cube does as 3.84", () => {
    expect(narrowingDepth([0.02]).taper).toBe(0);
    expect(narrowingDepth([0.05, 0.05, 0.05]).taper).toBeCloseTo(3.84, 2);
  });
  test("whatever the proportions, the volume is that of the block and the order of axes does not matter", () =>
    holdsForAll([between(0.01, 0.5), between(0.01, 0.5)], (a, b) => {
      const { depth, taper, openness } = narrowingDepth([a, b]);
      expect((openness * depth) / (taper + 1)).toBeCloseTo(1, 9);
      expect(narrowingDepth([b, a]).taper).toBeCloseTo(taper, 6);
    }));
  test("a stack open at four edges dries sooner than a book of its size", () => {
    const stack = leafStack(octavo, bookPaper(20));
    expect(hoursUntilRelHum(stack, 20, 0.8, room, 0.55, 40_000)).toBeLessThan(
      hoursUntilRelHum(book, 20, 0.8, room, 0.55, 40_000) ?? 0,
    );
  });
  test("palm leaf and leather carry the cautions of their stand-ins, and every caution has its sentence", () => {
    const leaf = leafStack(
      { height: 0.45, width: 0.05, thickness: 0.05 },
      { isotherm: ISOTHERMS.palmLeaf, dryDensity: 600, dryBulb: 28 },
    );
    const board = leatherBoard(
      { height: 0.24, width: 0.17, thickness: 0.003 },
      { isotherm: ISOTHERMS.leather, dryDensity: 800, dryBulb: 28 },
    );
    const codes = [leaf, board].flatMap((body) => dryingCourse(body, 28, 0.8, bag, [24]).cautions);
    expect(codes).toEqual(expect.arrayContaining(["palm-leaf-by-wood", "leather-diffusivity-assumed"]));
    for (const code of codes) expect({ ...CAUTIONS, ...SORPTION }[code]).toMatch(/\.$/);
  });
});

test.each([
  ["an item at 99.5 %, where free water begins", () => dryingCourse(book, 20, 0.995, room, [1])],
  ["an item drier than the curves", () => dryingCourse(book, 20, 0.005, room, [1])],
  ["a room above 100 %", () => dryingCourse(book, 20, 0.8, { kind: "room", relHum: 1.01 }, [1])],
  ["per cent where a fraction belongs", () => dryingCourse(book, 20, 85, room, [1])],
  ["hours that run back", () => dryingCourse(book, 20, 0.8, room, [10, 5])],
  ["a sheaf thicker than the book", () => fannedBook(octavo, 0.05, bookPaper(20))],
  ["a bag without air", () => dryingCourse(book, 20, 0.8, { ...bag, airVolume: 0 }, [1])],
] as const)("%s is refused", (_, act) => {
  expect(act).toThrow(OutOfRange);
});

test("a series whose hours do not rise is refused", () => {
  expect(() =>
    dryingCourse(book, 20, 0.8, { kind: "room", relHum: { hours: [0, 0], relHums: [0.5, 0.5] } }, [1]),
  ).toThrow(/must rise/);
});

function blockOf(a: number, b: number): Pick<DryingBody, "dryMass" | "openArea" | "depth" | "taper"> {
  const { depth, taper, openness } = narrowingDepth([a, b]);
  return { dryMass: 1, openArea: openness / 690, depth, taper };
}
