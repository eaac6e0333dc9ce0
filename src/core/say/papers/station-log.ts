/** Words of the log sheet that stays at a cleaning station. */
export const STATION_LOG = {
  kind: "Station log",
  rules: {
    head: "After every item that is not clean:",
    text: "sheet off, folded inward; pick up dust with a damp cloth or the fine-filter vacuum; wipe table and tools; let it dry; fresh gloves. Write the line before the next item comes.",
  },
  alcohol: {
    head: "Alcohol",
    text: "is for tables, never for an item: pour little, air the room, no flame or spark, gloves and goggles. Tools are washed with detergent. Follow the product’s own label.",
  },
  wiped: "Wiped",
  columns: {
    day: "Day, time",
    last: "Last on it: item, what it left",
    method: "How",
    product: "Product, strength",
    dry: "Dry at",
    who: "Who",
    next: "Released for",
  },
  tools: "Tools: a set stays with one kind of dirt",
  toolColumns: {
    set: "Set, colour",
    used: "Used on",
    washed: "Washed",
    hung: "Hung at",
    dry: "Bone dry at",
    back: "Back, or thrown away",
    who: "Who",
  },
} as const;
