import {
  airChangesFromPurifier,
  clearanceMinutesFrom,
  ethanolInRoom,
  MEAN_FREE_PATH,
  reentryWaitFrom,
  settlingRateFrom,
  settlingVelocityFrom,
  slipFromDiameter,
  stillAirHoursFrom,
  vapourFromSteadyUse,
} from "../../../src/core/physics/rooms/room-air.ts";
import { ethanolMassFromVolume } from "../../../src/core/physics/solutions/ethanol-amounts.ts";
import { DESIGN_LIMIT } from "../../../src/core/physics/solutions/exposure-limits.ts";
import { type CheckModels, type Inputs, num } from "../model.ts";

const orElse = (inputs: Inputs, name: string, usual: number): number =>
  inputs[name] === undefined ? usual : num(inputs, name);

/** The rows on vapour know no mixing factor. */
const room = (inputs: Inputs) => ({
  volume: num(inputs, "room_m3"),
  airChangeRate: num(inputs, "ach"),
  mixingFactor: orElse(inputs, "mixingFactor", 1),
});
/** Height of the rows that name it in their keys, m. */
const ROW_HEIGHT = 2.5;

/** These rates are printed to four decimals, which for the finest dust (0.0145) is coarser than the rows' own 0.2 %. */
const asPrinted = (rate: number): number => Math.round(rate * 1e4) / 1e4;

function velocityOf(inputs: Inputs): number {
  const diameter = num(inputs, "d_um");
  return settlingVelocityFrom({
    diameter,
    density: num(inputs, "rho_kg_m3"),
    viscosity: num(inputs, "mu_Pa_s"),
    slip:
      inputs.Cc === undefined
        ? slipFromDiameter(diameter, orElse(inputs, "lambda_um", MEAN_FREE_PATH))
        : num(inputs, "Cc"),
    gravity: num(inputs, "g"),
  });
}

export const models: CheckModels = {
  "air.clearanceMinutes": (inputs) => {
    const minutes = (efficiency: number) =>
      clearanceMinutesFrom(num(inputs, "ach"), efficiency, num(inputs, "mixingFactor"));
    return { t90: minutes(0.9), t99: minutes(0.99), t999: minutes(0.999) };
  },
  "aerosol.cunningham": (inputs) => ({ Cc: slipFromDiameter(num(inputs, "d_um"), num(inputs, "lambda_um")) }),
  "aerosol.settling": (inputs) => {
    const velocity = velocityOf(inputs);
    return {
      v_m_s: velocity,
      v_cm_h: velocity * 100 * 3600,
      stillAir_h_from_2_5m: stillAirHoursFrom(velocity, ROW_HEIGHT),
      stirredRate_per_h_H2_5m: asPrinted(settlingRateFrom(velocity, ROW_HEIGHT)),
    };
  },
  "air.reentryMinutes": (inputs) => {
    const wait = reentryWaitFrom(room(inputs), {
      height: num(inputs, "height_m"),
      cleanAirRate: num(inputs, "cadr_m3_h"),
      diameter: num(inputs, "d_um"),
    });
    return { rate_per_h: wait.rate, t99: wait.minutes99, t999: wait.minutes999 };
  },
  "air.cadrToAch": (inputs) => ({
    ach: airChangesFromPurifier(num(inputs, "cadr_m3_h"), num(inputs, "room_m3")),
  }),
  "box.instantRelease": (inputs) => {
    const vapour = ethanolInRoom(room(inputs), {
      volume: num(inputs, "liquid_mL"),
      volumeFraction: num(inputs, "volPercent") / 100,
      limit: DESIGN_LIMIT,
      hours: num(inputs, "averaging_h"),
    });
    return {
      mass_g: vapour.mass,
      C0_mg_m3: vapour.first,
      C0_ppm: vapour.firstPpm,
      TWA_mg_m3: vapour.mean,
    };
  },
  "box.continuous": (inputs) => {
    const grams = ethanolMassFromVolume(num(inputs, "liquid_mL_h"), num(inputs, "volPercent") / 100);
    const { steady, last } = vapourFromSteadyUse(room(inputs), 1000 * grams, num(inputs, "t_h"));
    return { steady_mg_m3: steady, C_mg_m3: last };
  },
};
