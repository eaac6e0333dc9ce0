import type { Count } from "../page.ts";

const of = (count: Count, one: string, many: string): string => `${count.text} ${count.n === 1 ? one : many}`;

const ANSWERS: Readonly<Record<string, string>> = {
  yes: "Yes",
  no: "No",
  unsure: "Unsure",
  none: "None",
  trace: "Trace",
  clear: "Clear",
  heavy: "Heavy",
  cut: "Cut in",
  on_surface: "On the surface",
  both: "Both",
  safety: "SAFETY",
  nitrate: "NITRATE",
};

/** An answer to a test, as its button says it. */
export const sayAnswer = (answer: string | number, unit = ""): string =>
  typeof answer === "number"
    ? `${answer}${unit === "" ? "" : ` ${unit}`}`
    : (ANSWERS[answer] ?? sayWord(answer));

/** A word of the vocabulary: `paper_rag` → “paper rag”. */
export const sayWord = (word: string): string => word.replaceAll("_", " ");

/** The part a question is about; the body of the item has no name. */
export const sayPart = (part: string): string => (part === "" ? "the item itself" : part);

/** Words of the Door: arrival, survey, triage. */
export const door = {
  intro: "Whatever arrives is given a number, looked at, and sent on its way or set aside.",
  newItem: "Not listed yet: list it",
  back: "Back to the Door",
  openTags: (n: Count) => (n.n === 0 ? "Tags to print" : `Tags to print (${n.text})`),
  list: "At the Door",
  filters: {
    all: "All",
    survey: "To look at",
    ready: "Ready to go on",
    aside: "Set aside",
    settle: "To settle",
  },
  filterLabel: "Show",
  search: "Number or title",
  found: (n: Count) => of(n, "item", "items"),
  noneHere: "Nothing waits at the Door",
  noneHereHelp: "Scan or type a number above: a new one can be listed at once.",
  noneFound: "Nothing here is like that",
  noneFoundHelp: "Show all, or clear the words you search by.",
  must: "must",
  toCome: (n: Count) => `${of(n, "item is", "items are")} still being looked up.`,
  marks: {
    "at the Door": "answers missing",
    route: "ready to go on",
    "set aside": "set aside",
    done: "done",
  },
  disagree: "two answers",

  unknown: (id: string) => `No item ${id} is listed`,
  unknownHelp: "Look at the number on the tag again, or list it as a new item.",
  details: "What it is",
  change: "Change these words, sizes, parts",
  sizes: (h: string, w: string, t: string) => `${h} × ${w} × ${t} mm`,
  leaves: (n: Count) => of(n, "leaf", "leaves"),
  foundIn: (where: string) => `Found in ${where}`,
  rule: (words: string) => `The owner’s rule: ${words}`,

  survey: "Survey",
  question: (part: string) => (part === "" ? "Next question" : `Next question: ${part}`),
  glance: (part: string) => (part === "" ? "At a glance" : `At a glance: ${part}`),
  glanceHelp: "Mark what is there, or what you cannot tell. What is left is written down as no.",
  glanceNone: "None of these is there",
  glanceRest: "Write it so; the rest is no",
  leaveOpen: "Not tested",
  how: (words: string) => `How: ${words}.`,
  stopTest: "If yes, everything stops.",
  unsureMeans: "Unsure is an answer: it counts as the safer side.",
  skip: "Not now",
  skipHelp: "Leaves it open: not tested is never no.",
  skipped: (n: Count) => `${of(n, "question was", "questions were")} put off`,
  askSkipped: "Ask them now",
  saidNumber: "Write it down",
  number: (least: number, most: number, unit: string) => `${least} to ${most} ${unit}`.trim(),
  numberOut: "That number is outside what can be.",
  settled: "Nothing more to ask",
  settledHelp: "Nothing that can still be found at the Door would change what is done with it.",
  mustAsk: (n: Count) => `${of(n, "must-ask answer is", "must-ask answers are")} missing`,
  matters: (n: Count) => `An answer here can bring in or rule out ${of(n, "rule", "rules")}.`,
  forbidden: "Not to be tested here",
  forbiddenBy: (test: string, rule: string, text: string) => `${test}: forbidden by rule ${rule}. ${text}`,
  writeUnsure: "Write it down as unsure",
  later: "Later, or by somebody else",
  laterHours: (test: string, hours: Count) => `${test}: read after ${of(hours, "hour", "hours")}`,
  laterWho: (test: string, who: string) => `${test}: ${who}`,
  enterNow: (test: string) => `Enter now: ${test}`,
  said: (short: string, answer: string) => `${capital(short)}: ${answer.toLowerCase()}`,
  saidSeveral: (n: Count) => of(n, "answer written down", "answers written down"),

  dangers: "Danger to people",
  maybe: "May hold",
  holds: "Holds",
  peopleRules: "For people, the rules say",
  cleanWork: (name: string) =>
    `${name} has clean work today: close the item, leave it, and let somebody else go on.`,
  follows: "What follows",
  conditions: "Found",
  noConditions: "No damage found so far",
  outcome: "What becomes of it",
  rest: (where: string) => `Meanwhile it stays ${where}.`,
  whom: "Whom to ask",
  route: "Its way",
  step: (room: string, act: string, minutes: Count) =>
    `${room}: ${act}, about ${of(minutes, "minute", "minutes")}`,

  stop: "Stop",
  stopBecause: (what: string) => `Found: ${what}`,
  stopUnsure: (what: string) =>
    `Unsure: ${what}. Unsure counts as yes until somebody has shown that it is not`,
  stopSteps: {
    close: "Close it now as it lies. No wiping, no sniffing, no further look.",
    keep: (where: string) => `Keep it ${where}.`,
    mark: "Mark it with the sign and “ask before opening”.",
    ask: "Ask the adviser; tell the lead. Nobody works on it until there is an answer.",
    wash: "Take the gloves off inside out, wash hands and face, and say so to the lead if powder, droppings or fumes reached anybody.",
    leave: "Do not touch or move it. Everybody leaves the room; shut the door behind you.",
    call: "Call the fire service now, then the lead.",
    local: "Local rules and licensed practice come first.",
  },
  printMark: "Print its hazard tag",
  wrong: "The answer was a mistake",
  wrongHelp: "Change it only if you, or whoever answered, mistook what was seen.",

  answers: "Answers given",
  noAnswers: "No answer yet",
  answeredBy: (by: string, day: string) => [by, day].filter((each) => each !== "").join(", "),
  changeAnswer: (test: string) => `Change: ${test}`,
  takeBack: "Not tested after all",
  saidTakenBack: (test: string) => `${capital(test)}: not tested`,
  notYours: "Another device wrote this. A new answer can be given above; taking it back is the lead’s.",

  disagreement: "Two answers to settle",
  disagreementHelp: "Look again together, and choose what you both see. Until then it counts as unsure.",
  togetherWho: "Who looked again",
  settle: (answer: string) => `Settle: ${answer}`,
  saidSettled: (test: string, answer: string) => `Settled: ${test}, ${answer.toLowerCase()}`,
  oneAtLeast: "Mark at least one person who looked again.",

  pictures: "Pictures",
  shot: "What it shows",
  shots: { as_found: "As found", cover: "Cover", label: "Old label", damage: "Damage", inside: "Inside" },
  shotOf: (shot: string, part: string, day: string) =>
    [shot, part, day].filter((each) => each !== "").join(", "),
  noPictures: "No picture yet",
  saidPicture: (shot: string) => `Picture kept: ${shot.toLowerCase()}`,

  finish: "Book the minutes",
  finishHelp: "Minutes near mould count on the person’s account, whatever the task.",
  minutes: "Minutes at this survey",
  minutesOut: "Minutes are 1 to 480.",
  exposed: "Near mould, droppings or powder",
  finished: "Survey done",
  saidFinished: (id: string, minutes: Count) => `Surveyed ${id}, ${of(minutes, "minute", "minutes")}`,
  surveyed: (by: string, day: string, minutes: Count) =>
    `Surveyed${by === "" ? "" : ` by ${by}`}, ${day}, ${of(minutes, "minute", "minutes")}.`,
  toTag: "Put its tag on the list to print",
  tagWaits: "Its tag is on the list to print",
} as const;

/** Words of listing an item and its parts. */
export const listing = {
  titleNew: (id: string) => `List ${id}`,
  titleEdit: (id: string) => `Change ${id}`,
  help: "The format decides what is asked. What you do not know, leave: it can be said later.",
  like: (id: string) => `Like the one before (${id})`,
  title: "Title, or what it is",
  format: "Format",
  support: "Made of",
  media: "Writing and colour",
  cover: "Cover",
  process: "Photographic process",
  has: "Has",
  nothing: "not said",
  leaves: "Leaves or sheets",
  height: "Height, mm",
  width: "Width, mm",
  thickness: "Thickness, mm",
  mass: "Weight, kg",
  from: "Earliest year",
  to: "Latest year",
  must: "Must be done by the end",
  foundIn: "Found in",
  custodianRule: "The owner’s handling rule",
  write: "List it",
  rewrite: "Write it down",
  needs: "Give it a title and a format first.",
  said: (id: string) => `Listed ${id}`,
  saidChanged: (id: string) => `Changed ${id}`,
  known: (id: string) => `${id} is listed already; open it instead.`,
  parts: "Parts",
  partsHelp: "A piece with materials or rules of its own: it is asked about by itself.",
  noParts: "No part listed",
  part: "Part",
  addPart: "Add the part",
  partNeeds: "Give the part a name first.",
  saidPart: (part: string) => `Listed the part: ${part}`,
  usualParts: ["cover", "text block", "plates", "inserts", "painted outer leaves", "seal"],
} as const;

/** Words of tags. */
export const tags = {
  title: "Tags to print",
  help: "Print, cut, and lay each tag in its bag with the number outward. The square code holds the number alone.",
  none: "No tag waits",
  noneHelp: "A new item’s tag comes here; any item’s tag can be put here from its page.",
  print: "Print",
  clear: "These are printed: clear the list",
  remove: (id: string) => `Take ${id} off the list`,
  askFirst: "Ask before opening",
  code: (id: string) => `Square code: ${id}`,
  list: "Tags",
} as const;

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
