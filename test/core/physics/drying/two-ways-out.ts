import { satVapourPressure } from "../../../../src/core/physics/air/moist-air.ts";
import { filmFromHeatTransfer } from "../../../../src/core/physics/drying/diffusion.ts";
import type { DryingBody } from "../../../../src/core/physics/drying/drying-body.ts";

interface Course {
  readonly dryBulb: number;
  readonly start: number;
  readonly room: (hours: number) => number;
}

/** Mean moisture, % of dry mass, of a block that dries in two directions at once (one open face each), worked out the plain
 *  way: square cells, short steps, nothing in common with the drying model but its equation. Grids of 20 and 40 cells a side,
 *  the rest of the cell error taken out by Richardson's rule.   @param body for its isotherm, permeability and a density of 690 kg/m³ */
export function twoWayMoisture(
  body: DryingBody,
  a: number,
  b: number,
  course: Course,
  hours: readonly number[],
): number[] {
  const [coarse, fine] = [20, 40].map((cells) => onGrid(body, a, b, course, hours, cells));
  return hours.map((_, i) => (4 * (fine?.[i] ?? 0) - (coarse?.[i] ?? 0)) / 3);
}

function onGrid(
  body: DryingBody,
  a: number,
  b: number,
  { dryBulb, start, room }: Course,
  hours: readonly number[],
  n: number,
): number[] {
  const hourly = (3600 * satVapourPressure(dryBulb)) / 690;
  const inner = hourly * body.permeability;
  const film = hourly * filmFromHeatTransfer(3, dryBulb);
  const [dx, dy] = [a / n, b / n];
  const [gx, gy] = [inner / dx ** 2, inner / dy ** 2];
  const edge = (d: number): number => 1 / (1 / film + d / 2 / inner) / d;
  const [ex, ey] = [edge(dx), edge(dy)];
  const relHumOf = inverseTable(body, dryBulb);
  const water = new Float64Array(n * n).fill(body.isotherm.moistureContentFromRelHum(start, dryBulb));
  const relHum = new Float64Array(n * n);
  const longest = 0.2 / ((inner / body.isotherm.slope(0.4, dryBulb)) * (1 / dx ** 2 + 1 / dy ** 2)); // stable below 0.5
  const out: number[] = [];
  let at = 0;
  for (const until of hours) {
    while (at < until - 1e-9) {
      const step = Math.min(longest, until - at);
      const outside = room(at + step / 2);
      for (let i = 0; i < n * n; i++) relHum[i] = relHumOf(water[i] ?? 0);
      for (let y = 0; y < n; y++)
        for (let x = 0; x < n; x++) {
          const i = y * n + x;
          const here = relHum[i] ?? 0;
          const towards = (j: number, g: number): number => g * ((relHum[j] ?? 0) - here);
          let flow = x > 0 ? towards(i - 1, gx) : ex * (outside - here);
          flow += y > 0 ? towards(i - n, gy) : ey * (outside - here);
          if (x < n - 1) flow += towards(i + 1, gx);
          if (y < n - 1) flow += towards(i + n, gy);
          water[i] = (water[i] ?? 0) + step * flow;
        }
      at += step;
    }
    out.push((100 * water.reduce((sum, each) => sum + each, 0)) / (n * n));
  }
  return out;
}

/** The inverse of the isotherm, straight between 20,000 points from 20 to 98 %. */
function inverseTable({ isotherm }: DryingBody, dryBulb: number): (content: number) => number {
  const points = 20_000;
  const low = isotherm.moistureContentFromRelHum(0.2, dryBulb);
  const high = isotherm.moistureContentFromRelHum(0.98, dryBulb);
  const table = Float64Array.from({ length: points + 2 }, (_, i) =>
    isotherm.relHumFromMoistureContent(Math.min(high, low + ((high - low) * i) / points), dryBulb),
  );
  return (content) => {
    const place = ((content - low) / (high - low)) * points;
    const i = Math.floor(place);
    return (table[i] ?? 0) + (place - i) * ((table[i + 1] ?? 0) - (table[i] ?? 0));
  };
}
