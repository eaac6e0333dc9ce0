import { type Draft, draftOf } from "../draft.ts";
import { type Chance, entryAt, inShares } from "../seeded.ts";
import { stackSize, years } from "../sizes.ts";
import { FIRMS, LEDGERS, SHIPS, WHARVES } from "./names.ts";

const HAND = ["ink_iron_gall"];
const RULED = ["ink_iron_gall", "printing_ink"];
const CHILD_RULE = "Names of crew under age are not shown; ask the harbour office before the camera.";

/** 210 ledgers: 110 in sheep or goat, of which 90 powder; 8 tariff books; 2 almanacs in bright green cloth. */
export function ledgers(chance: Chance): Draft[] {
  const covers = chance.shuffled(
    inShares({
      leather_sheep: 74,
      leather_goat: 36,
      leather_calf: 28,
      bookcloth: 26,
      parchment: 16,
      paper: 20,
    }),
  );
  const rubs = chance.shuffled(inShares({ none: 20, trace: 38, clear: 34, heavy: 18 }));
  const ordinary = covers.map((cover) =>
    ledger(chance, cover, /sheep|goat/.test(cover) ? (rubs.pop() ?? "none") : "none"),
  );
  return [
    ...ordinary,
    ...Array.from({ length: 8 }, (_, at) => tariffBook(chance, at)),
    almanac(1861),
    almanac(1866),
  ];
}

function ledger(chance: Chance, cover: string, rub: string): Draft {
  const first = chance.whole(cover === "bookcloth" ? 1884 : 1838, 1944);
  const leaves = Math.round(chance.skewed(40, 64, 180));
  return draftOf(
    "ledger",
    {
      title: `${chance.pick(LEDGERS)}, ${chance.pick(WHARVES)}, ${first}-${String(first + chance.whole(1, 4)).slice(2)}`,
      format: "bound_volume",
      support: first < 1875 ? "paper_rag" : "paper_wood_pulp",
      media: chance.happens(0.2) ? [...HAND, "pencil"] : chance.pick([HAND, RULED]),
      cover,
      leaves,
      ...stackSize(chance.skewed(310, 370, 490), chance.skewed(205, 250, 340), leaves, 0.16, 95, 0.45),
      ...years(first, first + 4),
    },
    {
      rub_mark: rub,
      opening_angle: Math.round(chance.skewed(60, 110, 180) / 5) * 5,
      ...(chance.happens(0.12) ? { boards_detached: "yes" } : {}),
      ...(first < 1900 && chance.happens(0.08) ? { ink_halo_cracks: "yes" } : {}),
    },
  );
}

/** The box of customs tariffs that somebody once dusted against insects. */
function tariffBook(chance: Chance, at: number): Draft {
  const leaves = chance.whole(48, 90);
  return draftOf(
    "ledger",
    {
      title: `Customs tariff book, ${1909 + 3 * at}`,
      format: "bound_volume",
      support: "paper_wood_pulp",
      media: ["printing_ink"],
      cover: "paper",
      leaves,
      ...stackSize(300, 205, leaves, 0.12, 85, 0.2),
      ...years(1909 + 3 * at),
      found_in: "Box T-7",
    },
    { powder_between: "yes", chemical_odour: at < 3 ? "yes" : "no" },
  );
}

const almanac = (year: number): Draft =>
  draftOf(
    "ledger",
    {
      title: `Tide almanac with the clerk's notes, ${year}`,
      format: "bound_volume",
      support: "paper_rag",
      media: ["printing_ink", "pencil"],
      cover: "bookcloth",
      leaves: 72,
      ...stackSize(225, 145, 72, 0.12, 85, 0.2),
      ...years(year),
    },
    { bright_green: "yes" },
  );

type FileKind = readonly [title: (chance: Chance) => string, media: readonly string[], share: number];

const FILES: readonly FileKind[] = [
  [(c) => `Crew papers, ${c.pick(SHIPS)}`, ["ink_iron_gall", "stamp_ink"], 0.2],
  [(c) => `Damage claim, ${c.pick(SHIPS)} at ${c.pick(WHARVES)}`, ["typescript", "carbon_copy"], 0.12],
  [
    (c) =>
      `Letters with ${c.pick(FIRMS)} about ${c.pick(["mooring fees", "coal", "ice", "night work", "late lighters", "the crane"])}`,
    ["typescript", "ink_iron_gall"],
    0.16,
  ],
  [(c) => `Health certificates, ${c.pick(SHIPS)}`, ["printing_ink", "ink_iron_gall", "stamp_ink"], 0.1],
  [(c) => `Dredging tenders, ${c.pick(WHARVES)}`, ["typescript", "pencil"], 0.08],
  [(c) => `Passenger lists, ${c.pick(SHIPS)}`, ["typescript", "ink_dye"], 0.12],
  [
    (c) =>
      `Lamp and buoy reports, ${c.pick(["Ninnoch Rock", "Lazaret Point", "Outer Bar", "Saltmere Channel"])}`,
    ["ink_iron_gall"],
    0.08,
  ],
  [
    (c) => `Petition of the ${c.pick(["lightermen", "fish porters", "pilots", "coal gang", "boatmen"])}`,
    ["ink_iron_gall"],
    0.05,
  ],
  [(c) => `Storm repairs, ${c.pick(WHARVES)}`, ["typescript", "pencil", "carbon_copy"], 0.05],
  [(c) => `Import licences, ${c.pick(FIRMS)}`, ["printing_ink", "typescript", "stamp_ink"], 0.04],
];

/** 940 files of about 85 sheets, many pinned with pins that rust. */
export const files = (chance: Chance): Draft[] => Array.from({ length: 940 }, () => file(chance));

function file(chance: Chance): Draft {
  const [title, media] = kindByShare(chance);
  const first = chance.whole(1889, 1950);
  const leaves = Math.round(chance.skewed(12, 48, 195));
  const crew = media.includes("stamp_ink") && first > 1940;
  return draftOf(
    "file",
    {
      title: `${title(chance)}, ${first}`,
      format: "loose_sheets",
      support: "paper_wood_pulp",
      media: first < 1900 ? ["ink_iron_gall"] : media,
      cover: "none",
      leaves,
      ...stackSize(335, 215, leaves, 0.15, 78, 0),
      ...years(first, first + chance.whole(0, 3)),
      ...(crew ? { restricted_view: "yes", custodian_rule: CHILD_RULE } : {}),
    },
    {
      ...(chance.happens(0.45) ? { rusted_fasteners: "yes" } : {}),
      ...(chance.happens(0.07) ? { fragments_fall: "yes" } : {}),
    },
  );
}

function kindByShare(chance: Chance): FileKind {
  let left = chance.next();
  for (const kind of FILES) {
    left -= kind[2];
    if (left < 0) return kind;
  }
  return entryAt(FILES, 0);
}

/** 96 charts and plans: 14 hand-coloured, 6 of these with copper green; one thing nobody could name lies among them. */
export function charts(chance: Chance): Draft[] {
  const kinds = chance.shuffled(inShares({ green: 6, coloured: 8, blueprint: 12, tracing: 10, printed: 59 }));
  const drawn = kinds.map((kind) => chart(chance, kind));
  const tally = draftOf("chart", {
    title: "Notched board with painted marks, tied into a roll of plans",
    format: "other",
    support: "wood",
    media: ["painted"],
    leaves: 1,
    height_mm: 640,
    width_mm: 90,
    thickness_mm: 22,
    mass_kg: 0.7,
    found_in: "Plan chest drawer 3",
  });
  return [...drawn, tally];
}

const CHART_MEDIA: Readonly<Record<string, readonly string[]>> = {
  green: ["printing_ink", "watercolour", "copper_green"],
  coloured: ["printing_ink", "watercolour"],
  blueprint: ["blueprint"],
  tracing: ["ink_carbon", "pencil"],
  printed: ["printing_ink"],
};

function chart(chance: Chance, kind: string): Draft {
  const high = chance.skewed(420, 640, 980);
  const year = kind === "green" || kind === "coloured" ? chance.whole(1838, 1872) : chance.whole(1880, 1949);
  const what = chance.pick([
    "Soundings off",
    "Section of the sea wall at",
    "Plan of",
    "Mooring plan of",
    "Approaches to",
  ]);
  return draftOf(
    "chart",
    {
      title: `${what} ${chance.pick(WHARVES)}, ${year}`,
      format: "map_plan",
      support: kind === "tracing" ? "paper_tracing" : year < 1875 ? "paper_rag" : "paper_wood_pulp",
      media: CHART_MEDIA[kind] ?? [],
      leaves: 1,
      ...stackSize(high, high * chance.skewed(1.1, 1.35, 1.7), 1, 0.3, 160, 0),
      ...years(year),
      found_in: `Plan chest drawer ${chance.whole(1, 8)}`,
    },
    kind === "green" ? { ink_halo_cracks: chance.happens(0.6) ? "yes" : "no" } : {},
  );
}

/** 180 photographs, four of them cased. */
export function photographs(chance: Chance): Draft[] {
  const processes = chance.shuffled(
    inShares({ gelatin_silver: 128, albumen: 34, cyanotype: 9, collodion: 5 }),
  );
  const prints = processes.map((process) => print(chance, process));
  const cased = ["harbour master with telescope", "two pilots", "woman with a parasol", "child and dog"].map(
    (who) =>
      draftOf("photograph", {
        title: `Cased portrait, ${who}`,
        format: "photo_cased",
        support: "glass",
        media: ["photographic"],
        process: "collodion",
        leaves: 1,
        ...stackSize(95, 82, 1, 14, 4000, 0.05),
        ...years(1855, 1868),
        found_in: "Safe, upper tray",
      }),
  );
  return [...prints, ...cased];
}

function print(chance: Chance, process: string): Draft {
  const year = process === "albumen" ? chance.whole(1862, 1895) : chance.whole(1896, 1950);
  const what = chance.pick([
    "discharging at",
    "aground off",
    "dressed with flags at",
    "in dry dock near",
    "coaling at",
  ]);
  return draftOf(
    "photograph",
    {
      title: `${chance.pick(SHIPS)} ${what} ${chance.pick(WHARVES)}, ${year}`,
      format: "photo_print",
      support: process === "albumen" ? "paper_rag" : "paper_coated",
      media: ["photographic"],
      process,
      leaves: 1,
      ...stackSize(chance.skewed(90, 165, 305), chance.skewed(60, 120, 255), 1, 0.8, 420, 0),
      ...years(year),
      found_in: `Photograph box ${chance.whole(1, 6)}`,
    },
    { silver_mirror: process === "gelatin_silver" && chance.happens(0.2) ? "yes" : "no" },
  );
}

/** Three boxes of film; what is in them differs, so the third has parts. */
export function filmBoxes(): Draft[] {
  const box = (
    title: string,
    leaves: number,
    first: number,
    last: number,
    support: string,
    answers: Draft["answers"],
  ): Draft =>
    draftOf(
      "film",
      {
        title,
        format: "film_negative",
        support,
        media: ["photographic"],
        process: "gelatin_silver",
        leaves,
        ...stackSize(130, 180, leaves, 0.5, 180, 0.2),
        ...years(first, last),
        found_in: "Film cupboard",
      },
      answers,
    );
  const marked = box("Film box 1: harbour works, marked safety", 64, 1948, 1951, "film_acetate", {
    film_edge_mark: "safety",
    vinegar_odour: "yes",
    film_channels: "no",
  });
  const unmarked = box("Film box 2: war-time convoys, edges unmarked", 82, 1936, 1947, "film_unknown", {
    film_edge_mark: "none",
    film_channels: "no",
  });
  const mixed = box("Film box 3: regattas and visitors, mixed", 46, 1929, 1950, "film_unknown", {
    film_edge_mark: "unsure",
  });
  mixed.parts.push({
    row: { part: "marked strips", support: "film_acetate", leaves: 38 },
    answers: { film_edge_mark: "safety" },
  });
  mixed.parts.push({
    row: { part: "small round tin", support: "film_nitrate", leaves: 8 },
    answers: { film_edge_mark: "nitrate", film_sticky_or_bubbled: "yes", acrid_odour: "yes" },
  });
  return [marked, unmarked, mixed];
}

/** 51 bound newspapers. */
export const newspapers = (chance: Chance): Draft[] =>
  Array.from({ length: 51 }, (_, at) => {
    const leaves = Math.round(chance.skewed(52, 80, 130));
    return draftOf(
      "newspaper",
      {
        title: `Quillimbo Tide and Shipping News, ${at % 2 === 0 ? "January-June" : "July-December"} ${1919 + Math.floor(at / 2)}`,
        format: "newspaper",
        support: "paper_wood_pulp",
        media: ["printing_ink"],
        cover: chance.pick(["paper", "bookcloth"]),
        leaves,
        ...stackSize(590, 420, leaves, 0.12, 55, 1.1),
        ...years(1919 + Math.floor(at / 2)),
        found_in: `News rack ${Math.floor(at / 13) + 1}`,
      },
      { fragments_fall: chance.happens(0.4) ? "yes" : "no" },
    );
  });
