import { reentryWaitFrom, USUAL_MIXING } from "../../../core/physics/rooms/room-air.ts";
import { CAUTIONS as ROOM_AIR } from "../../../core/say/cautions/room-air.ts";
import {
  CLEAR_CAUTIONS,
  CLEAR_TODO,
  clearFigures,
  sayClearVerdict,
} from "../../../core/say/damp/clear-air.ts";
import type { Given } from "./given.ts";
import { CLEAR_AIR_HELP } from "./help-damp.ts";
import { answered, cautionsOf, type DampCommand, type Report } from "./report.ts";
import { roomFrom } from "./room.ts";

const OPTIONS = { room: "text", height: "text", changes: "text", purifier: "text", mixing: "text" } as const;
const USUAL_HEIGHT = 3; // m

interface ClearCase {
  readonly volume: number;
  readonly height: number;
  readonly changes: number;
  readonly purifier: number;
  readonly mixing: number;
}

/** How long a room stays shut after dusty work: before going in again to wipe down (99 % gone), and once more
 *  after wiping before the mask comes off. */
export const clearAir: DampCommand = (...to) =>
  answered({ name: "clear-air", help: CLEAR_AIR_HELP, options: OPTIONS }, to, (given) => {
    const of = caseFrom(given);
    given.settle();
    return reportOf(of);
  });

function caseFrom(given: Given): ClearCase {
  const size = roomFrom(given);
  if (size === null)
    given.refuse({
      option: "--room",
      got: undefined,
      expected: "length x width x height in metres, or a volume",
      remedy: "Write it like 5x4x3 or 60m3.",
    });
  return {
    volume: size?.volume ?? 1,
    height:
      size?.height ??
      given.quantity(
        "height",
        "metres",
        { low: 1.5, high: 20, remedy: "Measure floor to ceiling." },
        USUAL_HEIGHT,
      ),
    changes: given.quantity(
      "changes",
      "airChanges",
      {
        low: 0,
        high: 100,
        remedy: "A shut room has about 0.3, one with windows open wide 5 or more; 0 counts settling alone.",
      },
      0.3,
    ),
    purifier: given.quantity(
      "purifier",
      "airFlow",
      {
        low: 0,
        high: 1e4,
        remedy: "Take the clean air delivery rate for dust from its papers.",
      },
      0,
    ),
    mixing: given.quantity(
      "mixing",
      "count",
      {
        low: 1,
        high: 10,
        remedy: "1 is perfectly mixed air, 3 usual, 10 a room full of shelves.",
      },
      USUAL_MIXING,
    ),
  };
}

function reportOf(of: ClearCase): Report {
  const room = { volume: of.volume, airChangeRate: of.changes, mixingFactor: of.mixing };
  const wait = reentryWaitFrom(room, { height: of.height, cleanAirRate: of.purifier });
  const enter = roundedUp(wait.waitMinutes);
  return {
    exit: 0,
    sections: [
      {
        understood: [],
        verdict: sayClearVerdict(enter),
        todo: [CLEAR_TODO.leave(), CLEAR_TODO.wait(enter), CLEAR_TODO.wipe(), CLEAR_TODO.unmask(enter)],
        figures: clearFigures({ ...of, ...wait }),
        cautions: [
          ...cautionsOf(wait.cautions, ROOM_AIR),
          ...cautionsOf(["stale-air", "figures-count-dust-not-health", "local-rules"], CLEAR_CAUTIONS),
        ],
        data: {
          room,
          removalPerHour: wait.rate,
          minutes99: wait.minutes99,
          minutes999: wait.minutes999,
          enterAfterMinutes: enter,
          unmaskMinutesAfterWiping: enter,
        },
      },
    ],
  };
}

/** To whole five minutes, never down: nobody waits 37.4 minutes. */
const roundedUp = (minutes: number): number => 5 * Math.ceil(minutes / 5 - 1e-9);
