import { describe, expect, test } from "vitest";
import { shotListOf } from "../../../src/core/care/shot-list.ts";
import type { Item } from "../../../src/core/items/campaign.ts";

const item = (facts: Item["facts"], parts: Item["parts"] = []): Item => ({
  ...{ id: "L-5", title: "Register of the ferry", priority: "must", facts, parts },
});

// Views and openings: core/physics/imaging.ts shotsFromLeaves; common practice, no source.
describe("what an item is pictured in", () => {
  test("a volume of 100 leaves: six views of covers and edges, and 101 openings", () => {
    expect(shotListOf(item({ format: "bound_volume", leaves: 100 }), "image", 107)).toEqual([
      { set: "covers", part: "", wanted: 6 },
      { set: "openings", part: "", wanted: 101 },
    ]);
  });

  test("covers first: the six views alone", () => {
    expect(shotListOf(item({ format: "bound_volume", leaves: 100 }), "covers", 107)).toHaveLength(1);
  });

  test("palm leaves from both sides, and each part of its own beside", () => {
    const parts = [{ name: "painted board", facts: {} }];
    expect(shotListOf(item({ format: "palm_leaf_bundle", leaves: 40 }, parts), "image", 80)).toEqual([
      { set: "leaf-sides", part: "", wanted: 80 },
      { set: "part", part: "painted board", wanted: null },
    ]);
  });
});
