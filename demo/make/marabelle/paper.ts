import { type Draft, draftOf } from "../draft.ts";
import type { Chance } from "../seeded.ts";
import { inShares } from "../seeded.ts";
import { stackSize, years } from "../sizes.ts";
import { ACCOUNTS } from "./names.ts";

const QUARTERS = ["January-March", "April-June", "July-September", "October-December"] as const;

/** 300 bound quarters of the Gazette: three in four brittle, half with broken boards. */
export function gazettes(chance: Chance): Draft[] {
  const boards = chance.shuffled(inShares({ yes: 150, no: 150 }));
  return boards.map((broken, at) => {
    const leaves = Math.round(chance.skewed(120, 230, 340));
    const year = 1891 + Math.floor(at / 4);
    return draftOf(
      "gazette",
      {
        title: `Lissabwe Gazette, ${QUARTERS[at % 4]} ${year}`,
        format: "newspaper",
        support: "paper_wood_pulp",
        media: ["printing_ink"],
        cover: chance.pick(["bookcloth", "paper"]),
        leaves,
        ...stackSize(620, 445, leaves, 0.11, 52, 1.6),
        ...years(year),
      },
      { boards_detached: broken, fragments_fall: chance.happens(0.75) ? "yes" : "no" },
    );
  });
}

/** 70 account books: 12 in the bright green cloth of the fifties and sixties, some in leather that powders. */
export function accounts(chance: Chance): Draft[] {
  const kinds = inShares({ green: 12, cloth: 22, sheep: 16, calf: 8, paper: 12 });
  const rubs = chance.shuffled(inShares({ none: 3, trace: 6, clear: 5, heavy: 2 }));
  return kinds.map((kind) => account(chance, kind, kind === "sheep" ? (rubs.pop() ?? "none") : "none"));
}

const COVERS: Readonly<Record<string, string>> = {
  green: "bookcloth",
  cloth: "bookcloth",
  sheep: "leather_sheep",
  calf: "leather_calf",
  paper: "paper",
};

function account(chance: Chance, kind: string, rub: string): Draft {
  const leaves = Math.round(chance.skewed(48, 96, 220));
  const first = kind === "green" ? chance.whole(1853, 1867) : chance.whole(1871, 1938);
  return draftOf(
    "account book",
    {
      title: `${chance.pick(ACCOUNTS)}, ${first}`,
      format: "bound_volume",
      support: first < 1880 ? "paper_rag" : "paper_wood_pulp",
      media: chance.happens(0.4) ? ["ink_iron_gall", "pencil"] : ["ink_iron_gall"],
      cover: COVERS[kind] ?? "paper",
      leaves,
      ...stackSize(chance.skewed(230, 310, 400), chance.skewed(150, 200, 260), leaves, 0.15, 90, 0.4),
      ...years(first, first + 2),
    },
    { rub_mark: rub, ...(kind === "green" ? { bright_green: "yes" } : {}) },
  );
}
