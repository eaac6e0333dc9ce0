/** Words of the sheet that hangs up when work may stop. */
export const STOP_SHEET = {
  kind: "Stop sheet",
  title: "We stop",
  todo: "What to do, in this order",
  rests: "How every item is left",
  columns: { rest: "It lies", count: "Items", which: "Which", done: "Done" },
  afterwards: "After the stop somebody looks",
  trouble: "Not safe in time",
  keys: "Keys, water, power, window: who looks, how often (by hand)",
  boxed: "in its box",
  later: "not here yet: do not fetch it",
} as const;
