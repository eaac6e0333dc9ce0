import { absHumidityFromRelHum } from "../../../core/physics/air/moist-air.ts";
import { LDPE_PERMEABILITY, leakMass, permeanceFromPermeability } from "../../../core/physics/bags/bags.ts";
import { DIN_FINAL_RELHUM, dinUnitsFrom } from "../../../core/physics/bags/desiccant-units.ts";
import type { GelCaution } from "../../../core/physics/bags/gel-caution.ts";
import { type Bag, GEL_DRY_BULB, relHumFromGel } from "../../../core/physics/bags/gel-in-bag.ts";
import {
  conditionedGelContent,
  FLOOR_RELHUM,
  type GelPlan,
  gelPlan,
  packetsFrom,
} from "../../../core/physics/bags/gel-plan.ts";
import { regenerationFor } from "../../../core/physics/bags/gel-regeneration.ts";
import { ISOTHERMS, type SorbentMaterial } from "../../../core/physics/sorption/sorption.ts";
import { CAUTIONS as BAGS } from "../../../core/say/cautions/bags.ts";
import { CAUTIONS as DRYING } from "../../../core/say/cautions/drying.ts";
import { CAUTIONS as GEL } from "../../../core/say/cautions/gel.ts";
import { CAUTIONS as SORPTION } from "../../../core/say/cautions/sorption.ts";
import { GEL_TODO, gelFigures, sayGelCase, sayGelVerdict } from "../../../core/say/damp/gel.ts";
import { FRESH_GEL, filmOfBag } from "./closed-bag.ts";
import type { Given } from "./given.ts";
import { GEL_HELP } from "./help-damp.ts";
import { answered, type Caution, cautionsOf, type DampCommand, type Report } from "./report.ts";

const OPTIONS = {
  mass: "text",
  material: "text",
  from: "text",
  to: "text",
  floor: "text",
  bag: "text",
  temp: "text",
  conditioned: "text",
  "at-once": "text",
  packet: "text",
  days: "text",
  room: "text",
  film: "text",
  "colour-gel": "flag",
} as const;

const MATERIALS: Readonly<Record<string, SorbentMaterial>> = {
  "rag-paper": "ragPaper",
  "writing-paper": "writingPaper",
  newsprint: "newsprint",
  kraft: "kraft",
  leather: "leather",
  parchment: "parchment",
  photograph: "emulsion",
  "palm-leaf": "palmLeaf",
  wood: "wood",
  cotton: "cotton",
  jute: "jute",
};

/** Litres of air in a bag for each kg of item, where no bag is given: the item's own volume three times again. Common practice, no source. */
const AIR_PER_KILOGRAM = 4e-3; // m³/kg
const USUAL_DIN_DAYS = 30;

interface GelCase {
  readonly mass: number;
  readonly word: string;
  readonly material: SorbentMaterial;
  readonly from: number;
  readonly to: number;
  readonly floor: number;
  readonly air: number;
  readonly isBagAssumed: boolean;
  readonly dryBulb: number;
  readonly conditioned: number | null;
  readonly mostAtOnce: number | null;
  readonly packet: number;
  readonly days: number;
  readonly room: number;
  /** m */
  readonly film: number;
  readonly changesColour: boolean;
}

/** How much silica gel brings a bag down, in how many changes, and how much the item bears at one time. */
export const gel: DampCommand = (...to) =>
  answered({ name: "gel", help: GEL_HELP, options: OPTIONS }, to, (given) => {
    const of = caseFrom(given);
    given.settle();
    return reportOf(of);
  });

function caseFrom(given: Given): GelCase {
  const word = given.oneOf("material", Object.keys(MATERIALS), "Take the tenderest material in the bag.");
  const material = MATERIALS[word] ?? "ragPaper";
  const mass = given.quantity("mass", "mass", {
    low: 0.01,
    high: 200,
    remedy: "Weigh the item without bag and box.",
  });
  return {
    mass,
    word,
    material,
    ...humidities(given, material),
    ...enclosure(given, mass),
    ...charge(given),
  };
}

function humidities(given: Given, material: SorbentMaterial) {
  const bears = FLOOR_RELHUM[material];
  const floor = given.quantity(
    "floor",
    "relHum",
    {
      low: bears,
      high: 0.7,
      remedy: "This material cracks, curls or stiffens when it gets drier.",
    },
    bears,
  );
  const from = given.quantity("from", "relHum", {
    low: 0.3,
    high: 0.985,
    remedy:
      "Read the closed, rested bag. What is wet to the touch is blotted and aired first: gel is for damp things.",
  });
  const to = given.quantity(
    "to",
    "relHum",
    {
      low: Math.max(floor, 0.3),
      high: 0.8,
      remedy: "Below the floor the item is harmed; above 65 % mould can grow.",
    },
    Math.max(0.5, floor),
  );
  return { floor, from, to };
}

function enclosure(given: Given, mass: number) {
  const isBagAssumed = !given.has("bag");
  const air = given.quantity(
    "bag",
    "volume",
    {
      low: 1e-4,
      high: 10,
      remedy: "Give the air in the bag with its unit, for example 12L.",
    },
    AIR_PER_KILOGRAM * mass,
  );
  return {
    isBagAssumed,
    air,
    dryBulb: given.temperature(
      "temp",
      {
        ...GEL_DRY_BULB,
        remedy: "Gel is known between these; work in a room of such warmth.",
      },
      25,
    ),
    days: given.quantity("days", "days", { low: 0, high: 3660, remedy: "Days that the bag stays shut." }, 0),
    room: given.quantity("room", "relHum", { low: 0.05, high: 1, remedy: "Read it in the room." }, 0.65),
    film: given.quantity(
      "film",
      "millimetres",
      { low: 1e-5, high: 1e-3, remedy: "Common bags have 0.05 to 0.2 mm." },
      1e-4,
    ),
  };
}

function charge(given: Given) {
  const masses = { low: 1e-3, high: 100, remedy: "Give it with its unit, for example 100g." };
  return {
    conditioned: given.has("conditioned")
      ? given.quantity("conditioned", "relHum", {
          low: 0.05,
          high: 0.6,
          remedy: "Gel is conditioned to 40 to 50 % as a rule.",
        })
      : null,
    mostAtOnce: given.has("at-once") ? given.quantity("at-once", "mass", masses) : null,
    packet: given.quantity("packet", "mass", masses, 0.1),
    changesColour: given.has("colour-gel"),
  };
}

function reportOf(of: GelCase): Report {
  const isotherm = ISOTHERMS[of.material];
  const dryMass = of.mass / (1 + isotherm.moistureContentFromRelHum(of.from, of.dryBulb));
  const bag = bagFrom(of, dryMass);
  const startContent = of.conditioned === null ? FRESH_GEL : conditionedGelContent(of.conditioned);
  const plan = gelPlan(bag, {
    targetRelHum: of.to,
    floorRelHum: of.floor,
    startContent,
    ...(of.mostAtOnce === null ? {} : { mostAtOnce: of.mostAtOnce }),
  });
  const isReached = !plan.cautions.includes("more-exchanges-than-sense") || plan.charges.length === 0;
  const rest = relHumFromGel(bag, { dryMass: plan.charges[0]?.dryMass ?? 0, startContent }, of.floor);
  const water =
    dryMass *
    (isotherm.moistureContentFromRelHum(of.from, of.dryBulb) -
      isotherm.moistureContentFromRelHum(of.to, of.dryBulb));
  const packets = packetsFrom(firstCharge(plan), of.packet);
  const din = dinFrom(of, Math.max(0, water));
  const oven = regenerationFor(of.changesColour);
  return {
    exit: isReached ? 0 : 1,
    sections: [
      {
        understood: [sayGelCase({ ...of, material: of.word.replaceAll("-", " "), bag: of.air })],
        verdict: sayGelVerdict({ ...of, charges: plan.charges, low: rest.low, high: rest.high, isReached }),
        todo: todoOf(of, plan, isReached),
        figures: gelFigures({
          ...plan,
          dryMass,
          water: Math.max(0, water),
          startContent,
          floor: of.floor,
          packets: { count: packets.packets, mass: of.packet, changes: plan.charges.length },
          din: { units: din.units, days: din.days },
          oven,
        }),
        cautions: cautions(plan, [...packets.cautions, ...oven.cautions], of.days > 0),
        data: {
          wanted: of,
          dryMassKilograms: dryMass,
          waterKilograms: water,
          plan: {
            ...plan,
            mostGelMass: Number.isFinite(plan.mostGelMass) ? plan.mostGelMass : null,
            cautions: undefined,
          },
          relHumAtRest: { low: rest.low, usual: rest.relHum, high: rest.high },
          packetsAtOneTime: packets.packets,
          dinUnits: din.units,
          regeneration: { low: oven.low, high: oven.high, hours: oven.hours },
        },
      },
    ],
  };
}

function bagFrom(of: GelCase, dryMass: number): Bag {
  const bag: Bag = {
    dryBulb: of.dryBulb,
    airVolume: of.air,
    airRelHum: of.from,
    contents: [{ isotherm: ISOTHERMS[of.material], dryMass, relHum: of.from }],
  };
  if (of.days === 0) return bag;
  const film = filmOfBag(of.air, permeanceFromPermeability(LDPE_PERMEABILITY, 1000 * of.film));
  const room = { dryBulb: of.dryBulb, relHum: of.room };
  return { ...bag, leak: (relHum) => leakMass(film, room, relHum, of.days) };
}

/** What goes in at one time: the first charge, and no more than the item bears. */
const firstCharge = ({ charges, mostGelMass }: GelPlan) => ({
  gelMass: charges[0]?.dryMass ?? 0,
  mostGelMass,
});

/** Units beside the balance; the standard leaves the water of damp things out, so it is added. */
function dinFrom(of: GelCase, water: number) {
  const row = DIN_FINAL_RELHUM.filter(({ relHum }) => relHum <= of.to + 1e-9).at(-1) ?? DIN_FINAL_RELHUM[0];
  const days = of.days || USUAL_DIN_DAYS;
  const { units } = dinUnitsFrom({
    volume: of.air,
    vapourGramsPerCubicMetre: 1000 * absHumidityFromRelHum(of.dryBulb, of.from),
    packingMass: 0,
    packingGramsPerKilogram: 0,
    filmArea: filmOfBag(of.air, 0).area,
    transmission: DIN_TRANSMISSION,
    days,
    filmFactor: row.filmFactor,
    gramsPerUnit: row.gramsPerUnit,
    dampGrams: 1000 * water,
  });
  return { units, days };
}
/** LD-PE of 0.2 mm at 20 °C and 85 %, g/(m² day): guideline value with DIN 55474. */
const DIN_TRANSMISSION = 0.4;

const todoOf = (of: GelCase, plan: GelPlan, isReached: boolean): string[] =>
  plan.charges.length === 0
    ? []
    : [
        ...(isReached ? [] : [GEL_TODO.noGel()]),
        GEL_TODO.apart(),
        ...(plan.charges.length > 1 ? [GEL_TODO.change()] : []),
        ...(of.conditioned === null && of.floor >= 0.4 ? [GEL_TODO.condition(of.floor)] : []),
        GEL_TODO.read(),
      ];

function cautions(plan: GelPlan, more: readonly GelCaution[], isLeakCounted: boolean): Caution[] {
  return [
    ...cautionsOf([...plan.cautions, ...more], { ...SORPTION, ...GEL }),
    ...cautionsOf(["gel-never-touches", "release-by-reading-only"], DRYING),
    ...cautionsOf(isLeakCounted ? ["film-figure-is-a-band"] : [], BAGS),
  ];
}
