import type { Band, Route, Step } from "../../care/care.ts";
import { expected } from "../work.ts";
import type { HoursLeft, Placed, Work } from "./hours-left.ts";

/** Litres of bags in the Ward on each day. */
export class WardFill {
  readonly #litres: Float64Array;
  constructor(
    days: number,
    private readonly most: number,
  ) {
    this.#litres = new Float64Array(days);
  }
  fits(litres: number, from: number, until: number): boolean {
    for (let d = from; d <= until; d++) if ((this.#litres[d] ?? 0) + litres > this.most) return false;
    return true;
  }
  add(litres: number, from: number, until: number): void {
    for (let d = from; d <= until && d < this.#litres.length; d++)
      this.#litres[d] = (this.#litres[d] ?? 0) + litres;
  }
}

export const workOf = (step: Step): Work => ({
  act: step.act,
  minutes: expected(step.minutes),
  exposed: step.exposed,
  uses: step.uses,
});

/** A way to the box that fits before the stop. */
export interface Way {
  readonly placed: readonly Placed[];
  readonly boxedOn: number;
}

/**
 * Lays the steps of a route one after the other, all or none: the next step on the next day, the box on the same day, the release once
 * the longest usual wait is over, so that nothing is begun on a hope.
 * @param closed day on which its bag was closed; null: its admission is among the steps or it needs none
 */
export function layWay(
  hours: HoursLeft,
  ward: WardFill,
  route: Route,
  steps: readonly Step[],
  from: number,
  closed: number | null,
): Way | null {
  const placed: Placed[] = [];
  let bagFrom = closed;
  let ready = closed === null ? from : closed + waitOf(route.wardDays);
  for (const [at, step] of steps.entries()) {
    const spot = hours.place(workOf(step), ready);
    if (typeof spot === "string" || (step.act === "release" && !fitsWard(ward, route, bagFrom, spot.until))) {
      for (const each of typeof spot === "string" ? placed : [...placed, spot]) hours.remove(each);
      return null;
    }
    placed.push(spot);
    if (step.act === "admit") bagFrom = spot.until;
    const wait = step.act === "admit" ? waitOf(route.wardDays) : steps[at + 1]?.act === "box" ? 0 : 1;
    ready = spot.until + wait;
  }
  const released = placed.find(({ work }) => work.act === "release");
  if (released && bagFrom !== null) ward.add(route.wardLitres, bagFrom, released.until);
  return { placed, boxedOn: placed.at(-1)?.until ?? from };
}

const fitsWard = (ward: WardFill, route: Route, from: number | null, until: number): boolean =>
  from === null || from < 0 || ward.fits(route.wardLitres, from, until);

/** Days in the bag, at their longest. */
export const waitOf = (days: Band | null): number => Math.ceil(days?.high ?? 0);
