import type { Band, Step } from "../care/care.ts";
import type { Skill, StationKind } from "../items/campaign.ts";

/** What kind of work a step is: it decides who may do it and where. Exposed kinds end in `, exposed`. */
export interface Kind {
  readonly name: string;
  readonly exposed: boolean;
  readonly skills: readonly Skill[];
  /** Station it needs a place at; null: none. */
  readonly station: StationKind | null;
}

const PLACES: Readonly<
  Record<
    string,
    {
      skills: readonly Skill[];
      station: StationKind | null;
      /** Near growth: at another station, and by others too. */
      dirtyStation?: StationKind;
      dirtySkills?: readonly Skill[];
    }
  >
> = {
  survey: { skills: ["clean", "lead"], station: null },
  admit: { skills: ["clean", "lead"], station: null },
  release: { skills: ["clean", "lead"], station: null },
  covers: { skills: ["image"], station: "cover stand" },
  wrap: { skills: ["box", "clean"], station: "boxing table", dirtyStation: "mould bench" },
  clean: { skills: ["clean"], station: "clean bench", dirtyStation: "mould bench" },
  image: { skills: ["image"], station: "camera" },
  box: {
    skills: ["box"],
    station: "boxing table",
    dirtyStation: "mould bench",
    dirtySkills: ["box", "clean"],
  },
};

/** Every kind of work there is, exposed ones among them. */
export const KINDS: readonly Kind[] = Object.entries(PLACES).flatMap(([act, place]) => [
  { name: act, exposed: false, skills: place.skills, station: place.station },
  {
    name: `${act}, exposed`,
    exposed: true,
    skills: place.dirtySkills ?? place.skills,
    station: place.dirtyStation ?? place.station,
  },
]);
const BY_NAME = new Map(KINDS.map((kind, at) => [kind.name, at]));

/** The kind of a step, as its place in `KINDS`. */
export const kindOf = (step: Pick<Step, "act" | "exposed">): number =>
  BY_NAME.get(step.exposed ? `${step.act}, exposed` : step.act) ?? 0;

/** Expected value of a low-typical-high band, weights 1-4-1 (PERT; from memory). */
export const expected = (band: Band): number => (band.low + 4 * band.typical + band.high) / 6;
