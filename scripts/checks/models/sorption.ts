import { relHumFromSalt } from "../../../src/core/physics/air/hygrometer-salts.ts";
import {
  GAB_ROWS,
  moistureContentFromGab,
  relHumFromGab,
} from "../../../src/core/physics/sorption/gab-isotherm.ts";
import { type MonotoneCurve, monotoneCurve } from "../../../src/core/physics/sorption/monotone-curve.ts";
import {
  hendersonMoistureContentFromRelHum,
  pulpGabFromDryBulb,
} from "../../../src/core/physics/sorption/pulp-isotherm.ts";
import { ISOTHERMS } from "../../../src/core/physics/sorption/sorption.ts";
import { type RegainRow, tableIsotherm } from "../../../src/core/physics/sorption/table-isotherm.ts";
import {
  relHumFromWarming,
  woodMoistureContentFromRelHum,
} from "../../../src/core/physics/sorption/wood-isotherm.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { type CheckModels, type Inputs, num } from "../model.ts";

/** Shape of `data/physics/isotherms.json`, as far as it is used here. */
interface Published {
  readonly regain: {
    relHums: number[];
    dryBulb: number;
    rows: { material: string; moistureContents: number[] }[];
  };
  readonly salts: { dryBulbs: number[]; rows: { salt: string; relHums: number[] }[] };
}
const published = readPublished("physics/isotherms.json") as Published;

const wood = (inputs: Inputs) => ({
  mcPct: 100 * woodMoistureContentFromRelHum(num(inputs, "rhPct") / 100, num(inputs, "tC")),
});

/** The published row whose first word and the words in it are those asked for: `newsprint (wood pulp, 24% ash)`. */
function regainRow(material: unknown): RegainRow {
  const { relHums, rows } = published.regain;
  const score = (name: string) =>
    wordsOf(String(material)).filter((word) => wordsOf(name).includes(word)).length;
  const first = (name: string) => wordsOf(name)[0];
  const row = rows
    .filter((each) => first(each.material) === first(String(material)))
    .sort((a, b) => score(b.material) - score(a.material))[0];
  if (!row) throw new TypeError(`no regain row of material ${JSON.stringify(material)}`);
  return { ...row, relHums };
}
const wordsOf = (text: string): string[] => text.toLowerCase().match(/[a-z]+|\d+/g) ?? [];

function saltCurve(salt: unknown): MonotoneCurve {
  const row = published.salts.rows.find((each) => each.salt === salt);
  if (!row) throw new TypeError(`no published points of salt ${JSON.stringify(salt)}`);
  return monotoneCurve(published.salts.dryBulbs, row.relHums, "dry bulb", "°C");
}

const relHumOfRagPaper = (inputs: Inputs) => ({
  rhPct: 100 * relHumFromGab(GAB_ROWS.ragPaper, num(inputs, "mcPct") / 100),
});

/** Air-dry leather: at 45 %, the middle of ordinary rooms. */
const AIR_DRY_RELHUM = 0.45;

export const models: CheckModels = {
  "isotherm.wood": wood,
  "isotherm.woodTable42": wood,
  "isotherm.woodRhAtConstantMc": (inputs) => ({
    rhPct:
      100 * relHumFromWarming(num(inputs, "rh0Pct") / 100, num(inputs, "t0C"), num(inputs, "t1C")).relHum,
  }),
  "isotherm.regainTable": (inputs) => {
    const curve = tableIsotherm(regainRow(inputs.material), []);
    return {
      mcPct: 100 * curve.moistureContentFromRelHum(num(inputs, "rhPct") / 100, published.regain.dryBulb),
    };
  },
  "isotherm.gab": (inputs) => {
    const row = { m0: num(inputs, "m0Pct") / 100, C: num(inputs, "C"), K: num(inputs, "K") };
    return { mcPct: 100 * moistureContentFromGab(row, num(inputs, "aw")) };
  },
  "isotherm.gabArrhenius.bleachedFibre": (inputs) => ({
    mc: moistureContentFromGab(pulpGabFromDryBulb(num(inputs, "tC")), num(inputs, "aw")),
  }),
  "isotherm.tryding.henderson1": (inputs) => ({
    mc: hendersonMoistureContentFromRelHum(num(inputs, "aw"), num(inputs, "tC")),
  }),
  "isotherm.sanity.leatherAirDry": () => ({
    mcPctAbout: 100 * ISOTHERMS.leather.moistureContentFromRelHum(AIR_DRY_RELHUM, 20),
  }),
  "isotherm.sanity.cottonRegain": (inputs) => ({
    regainPct: 100 * ISOTHERMS.cotton.moistureContentFromRelHum(num(inputs, "rhPct") / 100, 20),
  }),
  "isotherm.paperDryBand": relHumOfRagPaper,
  "hygrometer.saltPoint": (inputs) => ({
    rhPct: 100 * relHumFromSalt({ A: num(inputs, "A"), B: num(inputs, "B") }, num(inputs, "tC")),
  }),
  "hygrometer.saltTable": (inputs) => ({ rhPct: 100 * saltCurve(inputs.salt).at(num(inputs, "tC")) }),
};
