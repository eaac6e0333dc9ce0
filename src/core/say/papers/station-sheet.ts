/** Words of the sheet that hangs at a station for a day. */
export const STATION_SHEET = {
  kind: "Station sheet",
  columns: {
    time: "Time",
    who: "Who",
    item: "Item",
    work: "What to do",
    leaves: "Leaves",
    minutes: "Min",
    done: "Done",
  },
  nearMould: "near mould",
  order:
    "From clean to dirty, as on each person’s day sheet. Clock times are a proposal; the order and the limits hold.",
  wipe: "After every row that leaves red rot, mould or poison: sheet off, wipe, let it dry, fresh gloves. Write it on the station log.",
  rule: "Between two items.",
} as const;
