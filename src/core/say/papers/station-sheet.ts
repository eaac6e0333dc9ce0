/** Words of the sheet that hangs at a station for a day. */
export const STATION_SHEET = {
  kind: "Station sheet",
  columns: {
    time: "Time",
    who: "Who",
    item: "Item",
    work: "What to do",
    leaves: "Leaves behind",
    minutes: "Min",
    done: "Done",
  },
  nearMould: "near mould",
  order:
    "From clean to dirty, as on each person’s day sheet. Clock times are a proposal; the order and the limits hold.",
  wipe: "After every row marked below: sheet off, wipe, let it dry, fresh gloves. Write it on the station log.",
  rule: "Before you start.",
} as const;
