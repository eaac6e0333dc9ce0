import { describe, expect, test } from "vitest";
import { ethanolHazards } from "../../../../src/core/physics/solutions/ethanol-label.ts";

describe("what a label of ethanol in water tells", () => {
  // Ethanol itself: flammable liquid of category 2, H225, GHS02, Danger: harmonised classification of CLP annex VI, index 603-002-00-5.
  test("pure ethanol is highly flammable: H225, the flame, danger", () => {
    const { signal, pictograms, hazards } = ethanolHazards(1);
    expect([signal, pictograms[0], hazards[0]]).toEqual(["danger", "GHS02", "H225"]);
  });
  test("wipe solution of 70 % is labelled as ethanol itself", () => {
    expect(ethanolHazards(0.7)).toEqual(ethanolHazards(1));
  });
  test("from one half up it is highly flammable though it flashes at 24 °C: the safer side of a table whose copies disagree", () => {
    expect(ethanolHazards(0.5).hazards).toContain("H225");
  });
  // Table of flash points: 20 % 36 °C, 10 % 49 °C; category 3 goes to 60 °C (from memory).
  test.each([0.1, 0.2, 0.4])("%d by volume still burns: H226, warning", (strength) => {
    expect(ethanolHazards(strength)).toMatchObject({ signal: "warning", hazards: ["H226", "H319"] });
  });
  test("the weaker, the milder; nothing is said of water", () => {
    const rank = { danger: 2, warning: 1 };
    let before = 3;
    for (const strength of [1, 0.7, 0.5, 0.49, 0.3, 0.1, 0.05, 0.01]) {
      const { signal } = ethanolHazards(strength);
      const now = signal ? rank[signal] : 0;
      expect(now).toBeLessThanOrEqual(before);
      before = now;
    }
    expect(ethanolHazards(0.01)).toEqual({ signal: null, pictograms: [], hazards: [], precautions: [] });
  });
});
