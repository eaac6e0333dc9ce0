import { held, room } from "./_internals/sorption-ranges.ts";
import { type Isotherm, relHumWhere, type SorptionCaution } from "./isotherm.ts";
import { monotoneCurve } from "./monotone-curve.ts";

/** One row of the published table in `data/physics/isotherms.json`: contents in kg/kg at `relHums`. */
export interface RegainRow {
  readonly material: string;
  readonly relHums: readonly number[];
  readonly moistureContents: readonly number[];
}

/** A curve through the points of a table, from (0, 0) to its last point; between them monotone, as `monotoneCurve`.
 *  A reader's own measured points go the same way. @throws OutOfRange beyond the last point: a table is not extended. */
export function tableIsotherm(row: RegainRow, cautions: readonly SorptionCaution[]): Isotherm {
  const curve = monotoneCurve([0, ...row.relHums], [0, ...row.moistureContents], "relative humidity", "1");
  const last = row.relHums.at(-1) ?? 0;
  return {
    material: row.material,
    moistureContentFromRelHum: (relHum, dryBulb) => (room(dryBulb), curve.at(relHum)),
    relHumFromMoistureContent: (content, dryBulb) => {
      room(dryBulb);
      held(content, curve.at(last));
      return relHumWhere(curve.at, content, 0, last);
    },
    slope: (relHum, dryBulb) => (room(dryBulb), curve.slopeAt(relHum)),
    cautions,
  };
}
