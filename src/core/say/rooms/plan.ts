import type { Count } from "../page.ts";

const of = (count: Count, one: string, many: string): string => `${count.text} ${count.n === 1 ? one : many}`;

/** Words of the Plan room: its screens, and what stands where there is no plan. */
export const plan = {
  title: "Plan",
  screens: "Parts of the plan",
  parts: {
    finish: "Finish",
    days: "Days",
    suppose: "Suppose",
    anew: "Plan anew",
    left: "No place",
    papers: "Papers",
  },
  madeFor: (day: string) => `Made for the morning of ${day}.`,
  acceptedOn: (day: string, who: string) =>
    who === "" ? `Accepted on ${day}.` : `Accepted on ${day} by ${who}.`,
  older: (days: Count) =>
    `It is ${of(days, "day", "days")} old: what was done since is not in it. “Plan anew” takes it in.`,
  fetching: "Fetching the plan …",
  none: "No plan yet",
  noneHelp: "A plan says who works on what on which day until the end, and when the end will be.",
  noneLead: "Make the first plan",
  noneOther: "The lead makes the first one.",
  closed: "The plan is not open to this device",
  closedHelp: "Its role sees the collection; the lead can let it in under another role.",
  failed: "The plan could not be fetched",
  failedHelp:
    "The laptop is out of reach, and this device has not seen the plan yet. Go nearer, then try again.",
  again: "Try again",
  kept: "The laptop is out of reach. This is the plan as this device last saw it.",
} as const;

/** Words of everybody's days until the end. */
export const days = {
  heading: "Everybody’s days until the end",
  intro:
    "Minutes near mould each day, with taking off, washing tools and waste, in a frame that is full at the day’s limit; below it the week against its limit.",
  how: "Drag across somebody’s days, or a station’s, to suppose them otherwise; drag the end, or a delivery, to another day. On a touch screen tap the first day, then the last. By keyboard: arrows move, Shift with an arrow takes more days, Enter chooses, Escape lets go.",
  region: "Days of everybody, stations, deliveries and the end",
  view: "Show as",
  picture: "Picture",
  table: "Table",
  toWeek: "Week of",
  earlier: "Earlier",
  later: "Later",
  week: (range: string) => `Week ${range}`,
  end: "End",
  goods: "Deliveries",
  away: "not there",
  closed: "nobody in",
  clean: "clean work this week",
  near: (minutes: string, limit: string) => `${minutes} of ${limit} near mould`,
  nearWeek: (minutes: string, days: number, most: number) => `${minutes}, ${days} of ${most} days`,
  nearWeekHeading: "Near mould in the week",
  stationOpen: "there",
  stationShut: "not there",
  ends: "the campaign ends",
  noDelivery: "no delivery",
  delivery: (quantity: string, store: string) => `${quantity} × ${store}`,
  spot: (row: string, day: string, what: string) => `${row}, ${day}: ${what}`,
  stretch: (row: string, range: string) => `${row}, ${range}`,
  moved: (what: string, day: string) => `${what} to ${day}`,
  picked: (what: string) => `${what}: choose another day, then press Enter`,
  suppose: "Suppose:",
  supposeAway: "away",
  supposeClean: "on clean work",
  supposeClosed: "shut",
  supposeOpen: "there",
  supposeMove: "Suppose it",
  letGo: "Let go",
  added: (words: string) => `Supposed: ${words}`,
  key: "Key",
  keyBar: "minutes near mould, bar full at the day’s limit",
  caution: "No limit that guards people gets looser by anything that is supposed here.",
} as const;

/** Words of supposing: what would be different, the answer beside the plan, and making it true. */
export const suppose = {
  heading: "What if …",
  intro:
    "Nothing here changes the plan. What is supposed is planned on its own and put beside the plan as it is.",
  add: "What would be different?",
  kinds: {
    person: "Somebody is away or on clean work",
    station: "A station is shut, or there on more days",
    end: "Another end",
    late: "A delivery comes later or earlier",
    delivery: "One more delivery",
    words: "Something else, in words",
  },
  who: "Who",
  what: "What",
  station: "Station",
  store: "Store",
  from: "From",
  to: "To, with this day",
  day: "Day",
  newEnd: "New last day",
  daysLater: "Days later",
  daysLaterHelp:
    "Less than 0: earlier. It moves all that is on its way of this store, and what is ordered from now on.",
  quantity: "How many",
  words: "In words",
  wordsHelp:
    "For example: “one more cleaner from 2026-07-06”, “second camera”, “120 mould minutes a day”, “Ward 800 litres”.",
  addThis: "Add",
  fill: "Fill in every field first.",
  list: "Supposed together",
  none: "Nothing is supposed yet",
  noneHelp: "Add something below, or drag across the days.",
  remove: (words: string) => `Take away: ${words}`,
  clear: "Take all away",
  ask: "Show what it does",
  askAgain: "Show it again",
  awayNow: "The laptop works it out and is out of reach now.",
  notLead: "The lead supposes and plans; this device’s role does not.",
  working: "Working out the plan as it is …",
  first: "Working out the first answer …",
  firstSaid: "First answer, not yet proved",
  proving: "Working out its own plan, and its proof …",
  proved: "The answer, with its proof",
  stop: "Stop asking",
  beside: "Beside the plan",
  asItIs: "As it is",
  supposed: "Supposed",
  cautions: "Mind",
  draws: (count: string) =>
    `${count} simulated campaigns each, the same luck for both. A short search for each; a plan made anew searches longer, and its dates may lie some days from these.`,
  proof: (asItIs: string, supposed: string) =>
    `Proved to within ${asItIs} (as it is) and ${supposed} (supposed) of the best there can be.`,
  accept: "Make it true",
  acceptHelp:
    "Writes what it means into the log, and then plans anew. The plan stays as it is until you accept the new one.",
  cannot:
    "This can be supposed, but the log has no entry that says it: list the people, items or stores in their rooms, then plan anew.",
  saidTrue: (words: string) => `Written into the log: ${words}`,
  cannotBeSupposed: "This cannot be supposed",
} as const;

/** Words of planning anew. */
export const anew = {
  heading: "Plan anew",
  intro:
    "From what was done, who is there and what is in store, as near to the plan people were told as it pays. Nobody works by it before you accept it.",
  first: "The first plan",
  firstIntro: "From the survey, who is there and what is in store. Nobody works by it before you accept it.",
  morning: "For the morning of",
  begin: "Plan anew",
  beginFirst: "Make the first plan",
  stop: "Stop with the best so far",
  stopping: "Stopping with the best so far …",
  steps: {
    reading: "Reading the campaign and its log …",
    care: (items: Count) => `Deciding care for ${of(items, "item", "items")} …`,
    planning: (at: string) => `Planning: ${at}`,
    writing: "Writing the plan and setting its papers …",
  },
  gap: (share: string) => `at most ${share} of the waits could still be saved`,
  noGap: "how good it is, is not known yet",
  ready: "A new plan is ready",
  readyHelp: "Nothing changed yet. Look what it moves, then accept it or leave it.",
  plan: "The plan now",
  fresh: "The new plan",
  compared: "The two plans",
  rows: {
    morning: "Made for",
    half: "Finished: as likely as not by",
    ten: "in 1 of 10 by",
    ninety: "in 9 of 10 by",
    boxed: "Boxed by the end",
    left: "Without a place for want of time",
    must: "of these must-do",
    late: "Orders already too late",
    gap: "Proved to within",
  },
  notByEnd: "not by the end",
  nothing: "nothing",
  kept: "Kept",
  moved: "Moved",
  near: "Days near mould",
  due: "Due days",
  arrived: "New",
  paces: "Pace",
  afresh: "Without regard to the plan now",
  changes: (shown: Count, all: string) =>
    String(shown.n) === all
      ? `All ${of(shown, "change", "changes")}, one by one`
      : `The first ${shown.text} of ${all} changes`,
  changesHelp: "All of them stand in changes.csv once the plan is accepted.",
  what: "What",
  was: "As told",
  is: "Now",
  why: "Why",
  no: "not before the end",
  accept: "Accept the new plan",
  acceptFirst: "Work by this plan",
  acceptHelp: "Sheets, cards and lists are set anew, and every device takes the new plan along.",
  leave: "Leave it",
  accepted: (day: string) => `The plan for the morning of ${day} is the plan now.`,
  acceptedHelp:
    "Print its day sheets under Papers. Other devices take it along as soon as they are in reach.",
  notLogged: "It is not in the log yet, so other devices do not look for it.",
  writeLog: "Write it into the log",
  toPapers: "To the papers",
  awayNow: "The laptop plans, and is out of reach now.",
  notLead: "The lead plans; this device’s role does not.",
} as const;

/** Words of what would move the date. */
export const easier = {
  heading: "What would move it",
  intro:
    "Tries the easiest things to ask for, each planned anew, and says which would help and which would not.",
  ask: "Try what would help",
  working: "Working out the plan as it is …",
  trying: (ask: string, at: string, of: string) => `${at} of ${of}: ${ask} …`,
  helps: "What would help, most for the asking first",
  noHelp: "What would not",
  mustLeft: "Must-do items that do not fit",
  nothing: "Nothing that was tried.",
} as const;
