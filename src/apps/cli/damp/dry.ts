import {
  type Enclosure,
  LDPE_PERMEABILITY,
  permeanceFromPermeability,
} from "../../../core/physics/bags/bags.ts";
import { relHumFromGelContent } from "../../../core/physics/bags/gel-isotherms.ts";
import {
  dryingCourse,
  hoursUntilRelHum,
  leakFromEnclosure,
  QUICK,
  type Surroundings,
} from "../../../core/physics/drying/drying.ts";
import type { DryingBody } from "../../../core/physics/drying/drying-body.ts";
import {
  criticalRelHum,
  DAMP_HOURS,
  DAMP_RELHUM,
  PARABOLA_RANGE,
} from "../../../core/physics/mould/mould-limits.ts";
import { CAUTIONS } from "../../../core/say/cautions/ward.ts";
import {
  DRY_TODO,
  type DryCase,
  dryFigures,
  sayAlreadyThere,
  sayDryCase,
  sayDryVerdict,
  sayNeverReached,
} from "../../../core/say/damp/dry.ts";
import { FRESH_GEL, filmOfBag } from "./closed-bag.ts";
import { bodyFrom, dryThingFrom } from "./dry-body.ts";
import { type Looks, looksFrom, readyReport } from "./dry-looks.ts";
import type { Given } from "./given.ts";
import { DRY_HELP } from "./help-damp.ts";
import { answered, type Caution, cannot, cautionsOf, type DampCommand, type Report } from "./report.ts";

const OPTIONS = {
  what: "text",
  size: "text",
  start: "text",
  room: "text",
  gel: "text",
  "gel-at": "text",
  bag: "text",
  temp: "text",
  want: "text",
  fanned: "flag",
  sheaf: "text",
  leaf: "text",
  readings: "text",
  weighings: "text",
  "scale-step": "text",
  "reader-error": "text",
  rest: "text",
  now: "text",
} as const;

const HORIZON = 3 * 8766; // h
const ASSUMED_ROOM = 0.65;
/** mm of polyethylene film, as common bags have. Common practice, no source. */
const BAG_FILM = 0.1;
/** Share of an item's closed bag that must be left for air. */
const LEAST_AIR = 1e-4; // m³

/** How long until a closed bag shows the wanted reading, as a band; narrowed by readings and weighings where there are any. */
export const dry: DampCommand = (...to) =>
  answered({ name: "dry", help: DRY_HELP, options: OPTIONS }, to, (given) => {
    const thing = dryThingFrom(given);
    const looks = looksFrom(given);
    const of: DryCase = { ...thing, ...climateFrom(given, looks), ...placeFrom(given) };
    given.settle();
    const body = bodyFrom(of, given);
    const place = surroundingsFrom(of, given);
    given.settle();
    return looks.hasLooks ? readyReport(of, looks, body, place) : plainReport(of, body, place);
  });

function climateFrom(given: Given, looks: Looks) {
  const start = looks.first?.relHum;
  return {
    start: given.quantity(
      "start",
      "relHum",
      {
        low: 0.2,
        high: 0.985,
        remedy:
          "Read the closed, rested bag. What is wet to the touch is beyond this: blot it, air it, or ask about freezing, and read it again.",
      },
      start,
    ),
    want: given.quantity(
      "want",
      "relHum",
      { low: 0.35, high: 0.65, remedy: "Release asks for 55 % or less." },
      0.55,
    ),
    dryBulb: given.temperature("temp", { low: 5, high: 40, remedy: "Never warm an item to hurry it." }, 20),
  };
}

function placeFrom(given: Given): Pick<DryCase, "room" | "isRoomAssumed" | "gel"> {
  const hasGel = given.has("gel");
  if (!hasGel && !given.has("room")) throw cannot("no-room-or-gel");
  if (hasGel && !given.has("bag")) throw cannot("gel-without-bag");
  const room = given.quantity(
    "room",
    "relHum",
    { low: 0.05, high: 1, remedy: "Read it in the room." },
    ASSUMED_ROOM,
  );
  const mass = { low: 1e-3, high: 200, remedy: "Give it with its unit, for example 500g." };
  const size = { low: 1e-4, high: 100, remedy: "Give it with its unit, for example 12L." };
  return {
    room,
    isRoomAssumed: !given.has("room"),
    gel: hasGel
      ? { mass: given.quantity("gel", "mass", mass), bag: given.quantity("bag", "volume", size) }
      : null,
  };
}

function surroundingsFrom(of: DryCase, given: Given): Surroundings {
  if (of.gel === null) return { kind: "room", relHum: of.room };
  const item = of.size[0] * of.size[1] * of.size[2];
  const airVolume = of.gel.bag - item;
  if (airVolume < LEAST_AIR)
    throw cannot("bag-too-small", `${1000 * of.gel.bag} L`, `${(1000 * item).toFixed(1)} L`);
  const film: Enclosure = filmOfBag(of.gel.bag, permeanceFromPermeability(LDPE_PERMEABILITY, BAG_FILM));
  const gelRelHum = given.quantity(
    "gel-at",
    "relHum",
    {
      low: 0.02,
      high: 0.6,
      remedy: "Gel is conditioned to 40 to 50 % as a rule; leave it out for fresh dry gel.",
    },
    relHumFromGelContent(FRESH_GEL),
  );
  return {
    kind: "bag",
    airVolume,
    gel: { dryMass: of.gel.mass, relHum: gelRelHum },
    airRelHum: of.room,
    leak: leakFromEnclosure(film, of.dryBulb),
    relHum: of.room,
  };
}

/** From size and place alone: damp moves as usual, and so many times as easily or hardly as nobody measured. */
function plainReport(of: DryCase, body: DryingBody, place: Surroundings): Report {
  const until = (factor: number): number | null =>
    hoursUntilRelHum(
      { ...body, permeability: body.permeability * factor },
      of.dryBulb,
      of.start,
      place,
      of.want,
      HORIZON,
      QUICK,
    );
  const band = { low: until(body.spread), usual: until(1), high: until(1 / body.spread) };
  const course = courseOf(of, body, place, band.usual);
  const isThere = of.start <= of.want;
  const { isotherm, dryMass } = body;
  const held = (relHum: number): number => dryMass * isotherm.moistureContentFromRelHum(relHum, of.dryBulb);
  const water = Math.max(0, held(of.start) - held(of.want));
  return {
    exit: band.usual === null ? 1 : 0,
    sections: [
      {
        understood: [sayDryCase(of)],
        verdict: verdictOf(of, band, course.lowest),
        todo: todoOf(of, isThere, band.usual),
        figures: isThere
          ? []
          : dryFigures({
              fast: band.low,
              usual: band.usual,
              slow: band.high,
              spread: body.spread,
              water,
              dryMass,
              after: course.after,
              lowest: course.lowest,
            }),
        cautions: cautionsFor(course.codes),
        data: {
          wanted: of,
          hours: { fast: band.low, usual: band.usual, slow: band.high },
          waterKilograms: water,
          dryMassKilograms: dryMass,
          relHumAfter: course.after,
          relHumAtLowest: course.lowest,
        },
      },
    ],
  };
}

function verdictOf(
  of: DryCase,
  { low, usual, high }: { low: number | null; usual: number | null; high: number | null },
  lowest: number,
): string {
  if (of.start <= of.want) return sayAlreadyThere(of);
  return low === null ? sayNeverReached(of, lowest) : sayDryVerdict(of, { low, usual, high });
}

/** What a rested bag would show on the way, and the lowest it comes to: in a leaky bag it rises again. */
function courseOf(of: DryCase, body: DryingBody, place: Surroundings, usual: number | null) {
  const looks = usual === null || usual < 1 ? [] : [usual / 4, usual / 2, usual];
  const hours = [...new Set([...looks, ...LONG_LOOKS])].sort((a, b) => a - b);
  const { points, cautions } = dryingCourse(body, of.dryBulb, of.start, place, hours, QUICK);
  const shown = points.filter((point) => looks.includes(point.hours));
  return {
    after: shown.map((point) => ({ days: point.hours / 24, relHum: point.equilibriumRelHum })),
    lowest: Math.min(...points.map((point) => point.equilibriumRelHum)),
    codes: cautions,
  };
}
const LONG_LOOKS = [720, 2160, 4320, 8766, HORIZON]; // h

function todoOf(of: DryCase, isThere: boolean, usual: number | null): string[] {
  if (isThere) return [];
  const isSlow = (usual ?? HORIZON) > 72;
  return [
    ...(isMouldy(of, usual) ? [DRY_TODO.mould()] : []),
    ...(usual === null ? [of.gel ? DRY_TODO.moreGel() : DRY_TODO.drierRoom()] : []),
    ...(isSlow && !of.fanned && of.gel === null && (of.kind === "book" || of.kind === "file")
      ? [DRY_TODO.fan()]
      : []),
    ...(usual === null ? [] : [DRY_TODO.readings(), DRY_TODO.look(of)]),
  ];
}

/** Damp enough for mould before it is dry: above the parabola of the readiest surfaces, or for two days at 65 %. */
function isMouldy({ start, dryBulb }: DryCase, usual: number | null): boolean {
  const held = Math.min(PARABOLA_RANGE.high, Math.max(PARABOLA_RANGE.low, dryBulb));
  const isLong = (usual ?? HORIZON) >= DAMP_HOURS;
  return start >= Math.min(1, criticalRelHum(held, "a")) || (start >= DAMP_RELHUM && isLong);
}

const cautionsFor = (codes: readonly (keyof typeof CAUTIONS)[]): Caution[] =>
  cautionsOf([...codes, "person-releases"], CAUTIONS);
