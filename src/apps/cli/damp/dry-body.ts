import {
  bookPaper,
  closedBook,
  DRY_DENSITY,
  type DryingBody,
  fannedBook,
  leafStack,
  leatherBoard,
  looseLeaves,
  type Stuff,
} from "../../../core/physics/drying/drying-body.ts";
import { ISOTHERMS } from "../../../core/physics/sorption/sorption.ts";
import { DRY_KINDS, type DryCase, type DryKind } from "../../../core/say/damp/dry.ts";
import { sayFault } from "../../../core/say/damp/faults.ts";
import type { Given } from "./given.ts";
import { lengthsFrom, MEASURES } from "./quantity.ts";

/* What dries: its kind and size as typed, and as the drying model sees it. */

const LEAST = 1e-4; // m
const MOST = 2; // m
const SIZE_EXPECTED = "height x width x thickness, each 0.1 to 2000 mm";

export function dryThingFrom(given: Given): Pick<DryCase, "kind" | "size" | "fanned"> {
  const kind = given.oneOf<DryKind>("what", DRY_KINDS, "Choose the nearest; a pamphlet is a book.");
  const fanned = given.has("fanned");
  if (fanned && (kind === "palm-leaf" || kind === "leather-board"))
    given.refuseInWords(sayFault("leaves-not-fanned"));
  const text = given.text("size");
  const size = text === undefined ? null : lengthsFrom(text, MEASURES.millimetres, 3);
  if (size === null || size.some((side) => !(side >= LEAST && side <= MOST)))
    given.refuse({
      option: "--size",
      got: text,
      expected: SIZE_EXPECTED,
      remedy: "Write it like 300x220x45.",
    });
  const [height = 1, width = 1, thickness = 1] = size ?? [];
  return { kind, fanned, size: [height, width, thickness] };
}

/** Sheaves between which air passes when a book is fanned, and one leaf. Common practice, no source. */
const USUAL_SHEAF = 5e-3; // m
const USUAL_LEAF = 2e-4; // m

export function bodyFrom(of: DryCase, given: Given): DryingBody {
  const [height, width, thickness] = of.size;
  const size = { height, width, thickness };
  const part = (name: string, usual: number): number =>
    given.quantity(
      name,
      "millimetres",
      {
        low: 1e-5,
        high: thickness,
        remedy: "It cannot be thicker than the whole.",
      },
      Math.min(usual, thickness),
    );
  const stuff = stuffOf(of);
  switch (of.kind) {
    case "book":
      return of.fanned ? fannedBook(size, part("sheaf", USUAL_SHEAF), stuff) : closedBook(size, stuff);
    case "file":
      return of.fanned ? fannedBook(size, part("sheaf", USUAL_SHEAF), stuff) : leafStack(size, stuff);
    case "palm-leaf":
      return leafStack(size, stuff);
    case "leather-board":
      return leatherBoard(size, stuff);
    case "loose-leaves":
      return looseLeaves(size, part("leaf", USUAL_LEAF), stuff);
  }
}

function stuffOf({ kind, dryBulb }: DryCase): Stuff {
  if (kind === "book") return bookPaper(dryBulb);
  if (kind === "palm-leaf")
    return { isotherm: ISOTHERMS.palmLeaf, dryDensity: DRY_DENSITY.palmLeaf, dryBulb };
  if (kind === "leather-board")
    return { isotherm: ISOTHERMS.leather, dryDensity: DRY_DENSITY.leather, dryBulb };
  return { isotherm: ISOTHERMS.ragPaper, dryDensity: DRY_DENSITY.paper, dryBulb };
}
