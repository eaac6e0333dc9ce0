/** The fixed words of the papers; another language gives its own. */
export interface PaperWords {
  readonly daySheet: string;
  readonly benchCard: string;
  readonly bagTag: string;
  readonly orderList: string;
  readonly page: string;
  readonly pageOf: string;
  readonly cleanWork: string;
  readonly mouldToday: string;
  readonly minutesOfLimit: string;
  readonly thisWeek: string;
  readonly minutes: string;
  readonly planned: string;
  readonly took: string;
  readonly done: string;
  readonly number: string;
  readonly time: string;
  readonly item: string;
  readonly work: string;
  readonly mouldMark: string;
  readonly mouldMarkMeans: string;
  readonly mask: string;
  readonly wear: string;
  readonly stopAndAsk: string;
  readonly ask: string;
  readonly follow: string;
  readonly parts: string;
  readonly where: string;
  readonly found: string;
  readonly steps: string;
  readonly gentlestFirst: string;
  readonly thenWord: string;
  readonly uses: string;
  readonly never: string;
  readonly notYet: string;
  readonly before: string;
  readonly after: string;
  readonly ownersRule: string;
  readonly why: string;
  readonly bagIn: string;
  readonly bagFor: string;
  readonly openOnlyBy: string;
  readonly release: string;
  readonly alsoInside: string;
  readonly date: string;
  readonly relHum: string;
  readonly who: string;
  readonly store: string;
  readonly packs: string;
  readonly quantity: string;
  readonly orderBy: string;
  readonly neededBy: string;
  readonly route: string;
  readonly late: string;
  readonly ordered: string;
  readonly nothingToOrder: string;
  readonly noWork: string;
  readonly nothing: string;
  readonly none: string;
}

export const ENGLISH: PaperWords = {
  daySheet: "Day sheet",
  benchCard: "Bench card",
  bagTag: "Bag tag",
  orderList: "Order list",
  page: "page",
  pageOf: "of",
  cleanWork: "Clean work this week",
  mouldToday: "Mould minutes today",
  minutesOfLimit: "of at most",
  thisWeek: "This week",
  minutes: "min",
  planned: "planned",
  took: "took",
  done: "Done",
  number: "No.",
  time: "Time",
  item: "Item",
  work: "What to do",
  mouldMark: "mould",
  mouldMarkMeans: "counts as mould minutes",
  mask: "Mask",
  wear: "Wear",
  stopAndAsk: "Stop and ask if",
  ask: "Ask",
  follow: "Follow local rules and licensed practice.",
  parts: "Parts",
  where: "Where",
  found: "Found",
  steps: "Steps, in this order",
  gentlestFirst: "gentlest first",
  thenWord: "then",
  uses: "Uses",
  never: "Never",
  notYet: "Not yet",
  before: "Before you start",
  after: "When done, and later",
  ownersRule: "The owner's rule",
  why: "Why",
  bagIn: "In since",
  bagFor: "Because",
  openOnlyBy: "Open only by",
  release: "Do not release by date",
  alsoInside: "Also inside",
  date: "Date",
  relHum: "% RH",
  who: "Who",
  store: "Store",
  packs: "Packs",
  quantity: "Quantity",
  orderBy: "Order by",
  neededBy: "Needed by",
  route: "Route",
  late: "LATE",
  ordered: "Sent",
  nothingToOrder: "Nothing to order.",
  noWork: "No work planned on this day.",
  nothing: "Nothing to print.",
  none: "nothing",
};
