import { describe, expect, test } from "vitest";
import type { Route } from "../../../src/core/care/care.ts";
import type { Act } from "../../../src/core/items/campaign.ts";
import { sayReady } from "../../../src/core/say/ready.ts";

const route = (item: string, destiny: Route["destiny"], ...acts: Act[]): Route =>
  ({
    item,
    destiny,
    steps: acts.map((act) => ({ act })),
    stoppedBy: [{ text: "It may be nitrate film." }],
  }) as unknown as Route;

describe("who may go before the camera", () => {
  const lines = sayReady([
    route("A", "route", "image", "box"),
    route("B", "route", "covers", "image", "box"),
    route("C", "route", "release", "clean", "image", "box"),
    route("D", "set aside"),
    route("E", "at the Door"),
    route("F", "route", "box"),
  ]);
  test("only an item whose next act is the picture", () => {
    expect(lines[0]).toBe("May go before the camera now (1 of 6): A.");
  });
  test("every other item is named once, with what stands before it", () => {
    const rest = lines.slice(1).join("\n");
    expect(rest).toContain("First: photograph the covers (1): B.");
    expect(rest).toContain("First: read the bag and test for release (1): C.");
    expect(rest).toContain("Set aside: It may be nitrate film (1): D.");
    expect(rest).toContain("which is never a no (1): E.");
    expect(rest).toContain("Pictured or boxed already (1): F.");
  });
  test("none is said as none", () => {
    expect(sayReady([route("B", "route", "clean", "image")])[0]).toBe(
      "None of 1 may go before the camera now.",
    );
  });
});
