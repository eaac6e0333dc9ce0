import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { seeded } from "../../../src/core/plan/chance.ts";
import { type DayLinks, type DayPiece, dayOrder } from "../../../src/core/plan/day-order.ts";
import { leastSetups } from "../../../src/core/plan/least-setups.ts";

const ACTS = ["covers", "wrap", "clean", "image", "box"] as const;
const STATIONS = ["mould bench", "clean bench", "camera"];

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

/** A day of invented pieces with a few must-follow pairs and, half the time, a set whose covers come first. */
function inventedDay(seed: number, size: number): { pieces: DayPiece[]; links: DayLinks } {
  const draw = seeded(seed);
  const below = (n: number): number => Math.floor(draw() * n);
  const pieces = Array.from({ length: size }, (_, at) => {
    const dirt = below(5) as DayPiece["dirt"];
    return piece({
      item: `I${below(size)}`,
      act: ACTS[at % 2 === 0 ? 0 : 1 + below(4)] ?? "clean",
      station: STATIONS[below(3)] ?? "",
      dirt,
      exposed: dirt === 3 || (dirt > 1 && draw() < 0.3),
      due: draw() < 0.3 ? null : below(4),
    });
  });
  const mustFollow: [number, number][] = [];
  for (let n = 0; n < size / 3; n++) {
    const first = below(size - 1);
    const then = first + 1 + below(size - first - 1);
    if (pieces[first]?.item !== pieces[then]?.item && pieces[then]?.act !== "covers")
      mustFollow.push([first, then]);
  }
  const ordinary = { mustFollow: mustFollow.filter(([a, b]) => rank(pieces[a]) <= rank(pieces[b])) };
  return { pieces, links: draw() < 0.5 ? ordinary : { ...ordinary, coversFirst: [["I0", "I1", "I2"]] } };
}
const rank = (one: DayPiece | undefined): number =>
  ACTS.indexOf((one?.act ?? "box") as (typeof ACTS)[number]);

/** What an order costs, told again from the rules: wipe-downs, steps back, moves, pairs against their due days. */
function costAgain(pieces: readonly DayPiece[]): number[] {
  let [wipes, back, moved, against] = [0, 0, 0, 0];
  for (let at = 0; at < pieces.length; at++) {
    const left = pieces[at] as DayPiece;
    const next = pieces[at + 1];
    if (!next) wipes += left.exposed || left.dirt >= 2 ? 1 : 0;
    else {
      if (left.exposed && !next.exposed) wipes++;
      else if (next.dirt < left.dirt && left.dirt >= 2) wipes++;
      if (next.dirt < left.dirt) back++;
      if (next.station !== left.station) moved++;
    }
    for (const later of pieces.slice(at + 1)) if ((left.due ?? 1e9) > (later.due ?? 1e9)) against++;
  }
  return [wipes, back, moved, against];
}

/** Every broken "must come before", told again from the rules. */
function brokenLinks(pieces: readonly DayPiece[], order: readonly number[], links: DayLinks): string[] {
  const at = new Map(order.map((one, place) => [one, place]));
  const late = (a: number, b: number): boolean => (at.get(a) ?? 0) > (at.get(b) ?? 0);
  const broken: string[] = [];
  for (const [a, b] of links.mustFollow ?? []) if (late(a, b)) broken.push(`${a} after ${b}`);
  for (const [a, first] of pieces.entries())
    for (const [b, then] of pieces.entries()) {
      if (first.item === then.item && rank(first) < rank(then) && late(a, b))
        broken.push(`acts of ${first.item}`);
      for (const set of links.coversFirst ?? [])
        if (
          set.includes(first.item) &&
          set.includes(then.item) &&
          first.act === "covers" &&
          then.act !== "covers"
        )
          if (late(a, b)) broken.push(`covers of ${first.item}`);
    }
  return broken;
}

function* permutations(left: readonly number[], head: readonly number[] = []): Generator<readonly number[]> {
  if (left.length === 0) yield head;
  for (const one of left)
    yield* permutations(
      left.filter((other) => other !== one),
      [...head, one],
    );
}
const less = (a: readonly number[], b: readonly number[]): boolean => {
  const at = a.findIndex((value, n) => value !== b[n]);
  return at >= 0 && (a[at] as number) < (b[at] as number);
};

describe("the order of a day", () => {
  test("clean comes before dusty, red rot, dormant mould and poison, and then nothing is wiped before the end", () => {
    const pieces = [4, 3, 0, 2, 1].map((dirt, at) =>
      piece({ item: `I${at}`, dirt: dirt as DayPiece["dirt"], exposed: dirt === 3 }),
    );
    const { order, ...cost } = dayOrder(pieces.filter(({ dirt }) => dirt < 4));
    expect(order).toEqual([1, 3, 2, 0].map((at) => at));
    expect(cost).toEqual({ wipeDowns: 1, stepsBack: 0, moves: 0 });
    expect(dayOrder(pieces).order.at(-1)).toBe(0);
  });

  test("the covers of a set are pictured before the first of it is wrapped", () => {
    const pieces = ["wrap", "covers", "wrap", "covers"].map((act, at) =>
      piece({ item: at < 2 ? "A" : "B", act: act as DayPiece["act"], dirt: 2, due: at < 2 ? 1 : 2 }),
    );
    expect(dayOrder(pieces).order).toEqual([1, 0, 3, 2]);
    expect(dayOrder(pieces, { coversFirst: [["A", "B"]] }).order).toEqual([1, 3, 0, 2]);
  });

  test("a forced step back takes the other dirty work along, so that one wipe-down does for both", () => {
    const pieces = [
      piece({ item: "A", act: "covers", dirt: 2 }),
      piece({ item: "B", dirt: 0 }),
      piece({ item: "C", dirt: 2 }),
    ];
    const best = dayOrder(pieces, { mustFollow: [[0, 1]] });
    expect(best).toEqual({ order: [0, 2, 1], wipeDowns: 1, stepsBack: 1, moves: 0 });
  });

  test("like pieces go in order of due, and without a due day last", () => {
    const pieces = [null, 5, 2, 9].map((due, at) => piece({ item: `I${at}`, due }));
    expect(dayOrder(pieces).order).toEqual([2, 1, 3, 0]);
  });

  test("on 300 small days no order at all is better than the one given", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const { pieces, links } = inventedDay(seed, 2 + (seed % 6));
      const { order } = dayOrder(pieces, links);
      expect(brokenLinks(pieces, order, links), `seed ${seed}`).toEqual([]);
      const costOf = (list: readonly number[]): number[] =>
        costAgain(list.map((at) => pieces[at] as DayPiece));
      let best = costOf(order);
      const given = best;
      for (const other of permutations([...pieces.keys()]))
        if (less(costOf(other), best) && brokenLinks(pieces, other, links).length === 0) best = costOf(other);
      expect(given, `seed ${seed}`).toEqual(best);
    }
  });

  test("days too long for the subset programme have as few wipe-downs, steps back and moves as its pieces allow", () => {
    // Every piece of a day of 9 to 13 is doubled: like pieces side by side cost nothing, so the least cost stays what it was.
    for (let seed = 1; seed <= 24; seed++) {
      const { pieces, links } = inventedDay(seed, 9 + (seed % 5));
      const n = pieces.length;
      const doubled = [...pieces, ...pieces];
      const mustFollow = (links.mustFollow ?? []).flatMap(([a, b]): [number, number][] => [
        [a, b],
        [a + n, b + n],
        [a, b + n],
        [a + n, b],
      ]);
      const { order: small, ...few } = dayOrder(pieces, links);
      const { order: large, ...many } = dayOrder(doubled, { ...links, mustFollow });
      expect(many, `seed ${seed}`).toEqual(few);
      expect(brokenLinks(doubled, large, { ...links, mustFollow })).toEqual([]);
      expect(small.length * 2).toBe(large.length);
    }
  });

  test("the same pieces handed over in another order give the same day", () => {
    const { pieces } = inventedDay(7, 9);
    const named = pieces.map((each, at) => ({ ...each, item: `I${at}` }));
    const told = (list: readonly DayPiece[]): string[] =>
      dayOrder(list).order.map((at) => list[at]?.item ?? "");
    expect(told([...named].reverse())).toEqual(told(named));
  });

  test("a circle is named, piece by piece, for short and long days", () => {
    const pieces = Array.from({ length: 15 }, (_, at) => piece({ item: `I${at}` }));
    const mustFollow = [
      [0, 1],
      [1, 0],
    ] as const;
    expect(() => dayOrder(pieces.slice(0, 3), { mustFollow })).toThrow("clean of I0, clean of I1");
    expect(() => dayOrder(pieces, { mustFollow })).toThrow("clean of I0, clean of I1");
  });
});

/** Single machines of 13 jobs cut from published setup flow shops (Ruiz and Stützle), optima by a separate dynamic programme. */
const machines = new URL("../../../../shared/data/scheduling/single-machine-setups.json", import.meta.url);
interface Machine {
  readonly name: string;
  readonly processing: readonly number[];
  readonly setup: readonly (readonly number[])[];
  readonly optimalMakespan: number;
  readonly optimalSetupTotal: number;
}
if (existsSync(machines))
  describe("single machines with setups, each with a proved optimum", () => {
    const { instances } = JSON.parse(readFileSync(machines, "utf8")) as { instances: Machine[] };
    test.each(instances)("$name takes $optimalMakespan, the least there is", (machine) => {
      const setup = (from: number | null, to: number | null): number =>
        from === null || to === null ? 0 : (machine.setup[from]?.[to] ?? 0);
      const best = leastSetups({ count: machine.processing.length, setup });
      expect(new Set(best?.order).size).toBe(machine.processing.length);
      const along = (best?.order ?? []).reduce(
        (sum, to, at, order) => sum + (machine.processing[to] ?? 0) + setup(order[at - 1] ?? null, to),
        0,
      );
      expect([along, best?.cost]).toEqual([machine.optimalMakespan, machine.optimalSetupTotal]);
    });
  });
else
  test.skip("skipped: the single machines of ../shared/data/scheduling are not beside the project", () => {});

describe("the order of least setups", () => {
  test("on 100 small tables no order is cheaper, before and after the day counted too", () => {
    for (let seed = 1; seed <= 100; seed++) {
      const draw = seeded(seed);
      const count = 2 + (seed % 5);
      const table = Array.from({ length: count + 1 }, () =>
        Array.from({ length: count + 1 }, () => Math.floor(draw() * 20)),
      );
      const setup = (from: number | null, to: number | null): number =>
        table[from ?? count]?.[to ?? count] ?? 0;
      const best = leastSetups({ count, setup });
      const costs = [...permutations([...Array(count).keys()])].map((order) =>
        [...order, null].reduce<number>((sum, to, at) => sum + setup(order[at - 1] ?? null, to), 0),
      );
      expect(best?.cost, `seed ${seed}`).toBe(Math.min(...costs));
    }
  });
  test("14 jobs are refused with what to do instead", () => {
    expect(() => leastSetups({ count: 14, setup: () => 0 })).toThrow("order by class instead");
  });
});
