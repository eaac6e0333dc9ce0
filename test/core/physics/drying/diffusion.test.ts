import { describe, expect, test } from "vitest";
import { models } from "../../../../scripts/checks/models/diffusion.ts";
import {
  airPermeability,
  biotRoots,
  brickChange,
  diffusivityFromPermeability,
  filmFromHeatTransfer,
  flatPlateFilm,
  fourierFromPlaneSheetChange,
  permeabilityFromDiffusivity,
  planeSheetCentreChange,
  planeSheetChange,
  planeSheetChangeBehindFilm,
} from "../../../../src/core/physics/drying/diffusion.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import { between, holdsForAll } from "../holds-for-all.ts";
import { claimPublishedRows } from "../published-rows.ts";

claimPublishedRows("diffusion.json", models);

describe("a plane sheet", () => {
  test("changes the more the longer, and never wholly back", () =>
    holdsForAll([between(0, 5), between(1e-6, 1)], (fourier, more) => {
      expect(planeSheetChange(fourier + more)).toBeGreaterThanOrEqual(planeSheetChange(fourier));
      expect(planeSheetChange(fourier)).toBeLessThanOrEqual(1);
    }));
  test("takes as long for a share of its change as the share says", () =>
    holdsForAll([between(0.001, 0.9999)], (change) => {
      expect(planeSheetChange(fourierFromPlaneSheetChange(change))).toBeCloseTo(change, 9);
    }));
  test("has no step where the short-time form gives way to the series", () => {
    expect(planeSheetChange(0.02)).toBeCloseTo(planeSheetChange(0.02 - 1e-12), 9);
  });
  test("changes later at the centre than in the mean", () =>
    holdsForAll([between(0.002, 3)], (fourier) => {
      expect(planeSheetCentreChange(fourier)).toBeLessThanOrEqual(planeSheetChange(fourier));
    }));
  test("is never quicker behind a film, and near to bare behind a thin one", () => {
    holdsForAll([between(0.01, 2), between(0.05, 50)], (fourier, biot) => {
      expect(planeSheetChangeBehindFilm(fourier, biot)).toBeLessThanOrEqual(planeSheetChange(fourier) + 1e-9);
    });
    expect(planeSheetChangeBehindFilm(0.3, 1e5)).toBeCloseTo(planeSheetChange(0.3), 4);
  });
  test("behind a thick film empties like a vessel with a small hole: 1 − exp(−Bi·Fo)", () => {
    expect(planeSheetChangeBehindFilm(100, 1e-3)).toBeCloseTo(1 - Math.exp(-0.1), 4);
  });
  test("every root solves b tan b = Bi in its own half turn", () =>
    holdsForAll([between(0.01, 500)], (biot) =>
      biotRoots(biot, 5).forEach((b, n) => {
        expect(b * Math.sin(b) - biot * Math.cos(b)).toBeCloseTo(0, 6);
        expect(Math.floor(b / Math.PI)).toBe(n);
      }),
    ));
});

describe("blocks, air and film", () => {
  test("a block is done before any of its axes alone, and the order of axes does not matter", () =>
    holdsForAll([between(0, 0.99), between(0, 0.99), between(0, 0.99)], (a, b, c) => {
      expect(brickChange([a, b, c])).toBeGreaterThanOrEqual(Math.max(a, b, c) - 1e-12);
      expect(brickChange([c, a, b])).toBeCloseTo(brickChange([a, b, c]), 12);
    }));
  test("diffusivity and permeability are two ways of saying one thing", () =>
    holdsForAll(
      [between(1e-13, 1e-9), between(600, 7000), between(200, 1200), between(0.05, 0.6)],
      (p, sat, density, slope) => {
        expect(
          permeabilityFromDiffusivity(
            diffusivityFromPermeability(p, sat, density, slope),
            sat,
            density,
            slope,
          ) / p,
        ).toBeCloseTo(1, 12);
      },
    ));
  test("vapour moves easier in warm and in thin air", () => {
    expect(airPermeability(30)).toBeGreaterThan(airPermeability(10));
    expect(airPermeability(20, 80_000)).toBeGreaterThan(airPermeability(20, 101_325));
  });
  test("still room air gives a film of 2.0e-8 kg/(m² s Pa), within a twentieth", () => {
    expect(filmFromHeatTransfer(3, 20) / 2.0e-8).toBeCloseTo(1, 1); // Lewis relation with hc 3 W/(m² K), from memory
  });
  test("four times the wind doubles the film", () => {
    const air = { length: 0.2, kinematicViscosity: 1.51e-5, vapourDiffusivity: 2.5e-5, dryBulb: 21 };
    const slow = flatPlateFilm({ ...air, velocity: 0.4 }).film;
    expect(flatPlateFilm({ ...air, velocity: 1.6 }).film / slow).toBeCloseTo(2, 9);
  });
});

test.each([
  ["a negative Fourier number", () => planeSheetChange(-0.01)],
  ["a whole change, which takes for ever", () => fourierFromPlaneSheetChange(1)],
  ["a Biot number of nothing", () => biotRoots(0, 1)],
  ["air colder than −20 °C", () => airPermeability(-20.1)],
  [
    "a wind that is no longer smooth",
    () =>
      flatPlateFilm({
        velocity: 40,
        length: 0.2,
        kinematicViscosity: 1.51e-5,
        vapourDiffusivity: 2.5e-5,
        dryBulb: 20,
      }),
  ],
  ["a change above 1", () => brickChange([1.01])],
] as const)("%s is refused", (_, act) => {
  expect(act).toThrow(OutOfRange);
});
