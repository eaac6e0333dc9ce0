import type { CalendarEntry, Campaign, Skill, Station, StationKind } from "../../core/items/campaign.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { addDays, type Day } from "../../core/units/day.ts";
import { STATION_KINDS } from "./campaign-file.ts";
import { problem } from "./problem.ts";

/** What a campaign as a whole lacks: people, mould workers, a camera with open days. */
export const checkCampaign = (campaign: Campaign): Problem[] => [
  ...checkItems(campaign),
  ...checkPeople(campaign),
  ...checkCameras(campaign),
  ...checkStations(campaign.stations),
];

function checkItems({ items, findings }: Campaign): Problem[] {
  if (items.length === 0)
    return [problem("no-rows", "stop", {}, { remedy: "Mend the problems of this table, or add an item." })];
  return findings.length > 0
    ? []
    : [problem("no-findings", "note", {}, { remedy: "Begin with the survey." })];
}

const SKILL_WORDS: readonly (readonly [Skill, string])[] = [
  ["clean", "clean"],
  ["image", "photograph"],
  ["box", "box"],
];

function checkPeople({ people }: Campaign): Problem[] {
  if (people.length === 0)
    return [problem("no-people", "stop", {}, { remedy: "Add the people who work to the people table." })];
  const missing = SKILL_WORDS.filter(([skill]) => !people.some(({ skills }) => skills.includes(skill))).map(
    ([, expected]) =>
      problem(
        "nobody-can",
        "note",
        {},
        { expected, remedy: "Add the skill to someone, or a person who has it." },
      ),
  );
  if (people.some(({ mouldWork, skills }) => mouldWork && skills.includes("clean"))) return missing;
  const remedy =
    "Everything with growth stays in the Ward until someone may. Do not press anyone; follow local rules and licensed practice.";
  return [...missing, problem("nobody-mould-work", "note", {}, { remedy })];
}

function checkCameras(campaign: Campaign): Problem[] {
  const file = "campaign.json";
  const cameras = campaign.stations.filter(({ kind }) => kind === "camera");
  if (cameras.length === 0)
    return [
      problem(
        "no-camera",
        "stop",
        { file, column: "stations" },
        { remedy: 'Add a station of the kind "camera".' },
      ),
    ];
  const shut = cameras.filter(
    ({ id }) => !hasOpenDay(id, campaign.calendar, campaign.planFrom, campaign.end),
  );
  const severity = shut.length === cameras.length ? "stop" : "note";
  return shut.map(({ id }) =>
    problem(
      "camera-no-days",
      severity,
      {},
      {
        got: id,
        expected: `${campaign.planFrom} and ${campaign.end}`,
        remedy: "Look at its open and closed days.",
      },
    ),
  );
}

/** Whether a station is there on any day: its open days if it has some, less those on which it or everything is closed. */
export function hasOpenDay(station: string, calendar: readonly CalendarEntry[], from: Day, to: Day): boolean {
  const own = calendar.filter(({ who }) => who === station);
  const open = own.filter(({ what }) => what === "open");
  const closed = [
    ...own.filter(
      ({ what, hours }) => what === "closed" || what === "away" || (what === "hours" && hours === 0),
    ),
    ...calendar.filter(({ who, what }) => who === "everyone" && (what === "closed" || what === "away")),
  ];
  for (let day = from; day <= to; day = addDays(day, 1))
    if ((open.length === 0 || covers(open, day)) && !covers(closed, day)) return true;
  return false;
}

const covers = (entries: readonly CalendarEntry[], day: Day): boolean =>
  entries.some(({ from, to }) => from <= day && day <= to);

/** A cover stand may be missing: covers can be done at the bench; the other kinds have work of their own. */
const checkStations = (stations: readonly Station[]): Problem[] =>
  STATION_KINDS.filter((kind: StationKind) => kind !== "camera" && kind !== "cover stand")
    .filter((kind) => !stations.some((station) => station.kind === kind))
    .map((kind) =>
      problem(
        "no-station-of-kind",
        "note",
        { file: "campaign.json", column: "stations" },
        { expected: kind, remedy: "Add one, if there is any such work." },
      ),
    );
