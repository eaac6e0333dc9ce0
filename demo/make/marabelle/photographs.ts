import { type Draft, draftOf } from "../draft.ts";
import type { Chance } from "../seeded.ts";
import { inShares } from "../seeded.ts";
import { stackSize, years } from "../sizes.ts";
import { SCENES, SITTINGS } from "./names.ts";

const PLATE_SIZES = [
  [165, 120],
  [180, 130],
  [215, 165],
  [120, 90],
] as const;

const subject = (chance: Chance): string =>
  chance.happens(0.7) ? `Sitting: ${chance.pick(SITTINGS)}` : `View: ${chance.pick(SCENES)}`;

/** 2,150 gelatin dry plates. */
export const plates = (chance: Chance): Draft[] =>
  Array.from({ length: 2150 }, (_, at) => {
    const [high, wide] = chance.pick(PLATE_SIZES);
    const first = 1884 + Math.floor(at / 46);
    return draftOf(
      "plate",
      {
        title: `${subject(chance)}, plate ${at + 1}`,
        format: "glass_negative",
        support: "glass",
        media: ["photographic"],
        process: "gelatin_silver",
        leaves: 1,
        ...stackSize(high, wide, 1, 1.6, 4200, 0),
        ...years(first, first + 2),
      },
      { silver_mirror: chance.happens(0.35) ? "yes" : "no" },
    );
  });

/** 1,300 sheets and strips of film: 300 with no mark on the edge, 150 marked nitrate, the rest safety; one tin is sticky. */
export function film(chance: Chance): Draft[] {
  const kinds = inShares({ safety: 790, polyester: 60, nitrate: 149, bare: 210, late: 90 });
  return [...chance.shuffled(kinds).map((kind, at) => piece(chance, kind, at)), stickyTin()];
}

interface FilmKind {
  readonly support: string;
  readonly mark: string;
  readonly from: number;
  readonly to: number;
}

/** Unmarked film later than 1955 is no nitrate: the dates of the studio's register say so for 90. */
const FILM: Readonly<Record<string, FilmKind>> = {
  safety: { support: "film_acetate", mark: "safety", from: 1936, to: 1968 },
  polyester: { support: "film_polyester", mark: "safety", from: 1966, to: 1979 },
  nitrate: { support: "film_nitrate", mark: "nitrate", from: 1916, to: 1938 },
  bare: { support: "film_unknown", mark: "none", from: 1921, to: 1951 },
  late: { support: "film_unknown", mark: "none", from: 1957, to: 1971 },
};

function piece(chance: Chance, kind: string, at: number): Draft {
  const { support, mark, from, to } = FILM[kind] ?? {
    support: "film_unknown",
    mark: "none",
    from: 1920,
    to: 1950,
  };
  const strip = chance.happens(0.55);
  const leaves = strip ? chance.whole(3, 6) : 1;
  const first = chance.whole(from, to);
  const sour = support === "film_acetate" && chance.happens(0.11);
  return draftOf(
    "film",
    {
      title: `${subject(chance)}, ${strip ? "strip" : "sheet"} ${at + 1}`,
      format: "film_negative",
      support,
      media: ["photographic"],
      process: "gelatin_silver",
      leaves,
      ...stackSize(strip ? 62 : 130, strip ? 210 : 95, 1, 0.2, 190, 0),
      ...years(first, first + (kind === "bare" ? 4 : 1)),
    },
    {
      film_edge_mark: mark,
      ...(sour
        ? {
            vinegar_odour: "yes",
            film_channels: chance.happens(0.3) ? "yes" : "no",
            acid_strip_level: chance.whole(1, 3),
          }
        : {}),
    },
  );
}

const stickyTin = (): Draft =>
  draftOf(
    "film",
    {
      title: "Round tin, label gone, film stuck together",
      format: "film_negative",
      support: "film_nitrate",
      media: ["photographic"],
      process: "gelatin_silver",
      leaves: 12,
      ...stackSize(110, 110, 12, 2, 190, 0.15),
      ...years(1919, 1934),
      found_in: "Film room, sand bucket by the door",
    },
    { film_edge_mark: "nitrate", film_sticky_or_bubbled: "yes", acrid_odour: "yes" },
  );

/** 480 albums and loose prints; a revolving viewer nobody has a recipe for is counted among them. */
export function albumsAndPrints(chance: Chance): Draft[] {
  const albums = Array.from({ length: 60 }, (_, at) => album(chance, at));
  const prints = Array.from({ length: 419 }, (_, at) => print(chance, at));
  const viewer = draftOf("album or print", {
    title: "Revolving viewer with cards fixed inside",
    format: "other",
    support: "wood",
    media: ["photographic"],
    leaves: 36,
    height_mm: 410,
    width_mm: 260,
    thickness_mm: 250,
    mass_kg: 3.4,
    ...years(1890, 1910),
    found_in: "Shop window",
  });
  return [...albums, ...prints, viewer];
}

function album(chance: Chance, at: number): Draft {
  const leaves = Math.round(chance.skewed(10, 22, 56));
  const first = 1888 + at;
  const draft = draftOf(
    "album or print",
    {
      title: `Album ${at + 1}: ${chance.pick(SCENES)} and others`,
      format: "album",
      support: "paper_wood_pulp",
      media: ["photographic", "ink_iron_gall"],
      cover: chance.pick(["bookcloth", "paper", "textile"]),
      process: "gelatin_silver",
      leaves,
      ...stackSize(chance.skewed(200, 270, 360), chance.skewed(260, 330, 420), leaves, 1.1, 320, 0.6),
      ...years(first, first + 6),
    },
    { inserts: chance.happens(0.3) ? "yes" : "no" },
  );
  if (at % 10 === 4)
    draft.parts.push({
      row: { part: "strip in the back pocket", format: "film_negative", support: "film_unknown", leaves: 4 },
      answers: {
        film_edge_mark: "none",
        film_sticky_or_bubbled: "no",
        acrid_odour: "no",
        vinegar_odour: "no",
      },
    });
  return draft;
}

function print(chance: Chance, at: number): Draft {
  const process = chance.pick([
    "gelatin_silver",
    "gelatin_silver",
    "gelatin_silver",
    "albumen",
    "cyanotype",
    "chromogenic",
  ]);
  const first =
    process === "albumen"
      ? chance.whole(1872, 1896)
      : process === "chromogenic"
        ? chance.whole(1958, 1978)
        : chance.whole(1895, 1965);
  return draftOf(
    "album or print",
    {
      title: `${subject(chance)}, print ${at + 1}`,
      format: "photo_print",
      support: process === "albumen" ? "paper_rag" : "paper_coated",
      media: ["photographic"],
      process,
      leaves: 1,
      ...stackSize(chance.skewed(90, 180, 400), chance.skewed(60, 130, 300), 1, 0.6, 380, 0),
      ...years(first, first + 3),
    },
    { silver_mirror: process === "gelatin_silver" && chance.happens(0.3) ? "yes" : "no" },
  );
}
