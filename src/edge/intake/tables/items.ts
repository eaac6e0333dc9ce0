import { day, number, type Table, text, wholeNumber, word, words, year, yesOrNo } from "../columns.ts";
import { vocabulary } from "../vocabulary.ts";

const columns = {
  item: text({
    required: true,
    help: "The number on the tag; unique in the campaign.",
    examples: ["B-001", "B-002"],
  }),
  title: text({
    required: true,
    help: "What it is called.",
    examples: ["Rent roll of the lower villages", "Two maps of the harbour"],
  }),
  format: word({
    required: true,
    allowed: Object.keys(vocabulary.formats),
    help: "What kind of thing it is.",
    examples: ["bound_volume", "map_plan"],
  }),
  support: word({
    required: false,
    allowed: vocabulary.supports,
    help: "What the leaves are made of.",
    examples: ["paper_rag", "paper_wood_pulp"],
  }),
  media: words({
    required: false,
    allowed: vocabulary.media,
    help: "What it is written, printed or painted with.",
    examples: ["ink_iron_gall|stamp_ink", "printing_ink|watercolour"],
  }),
  cover: word({
    required: false,
    allowed: vocabulary.covers,
    help: "What covers it.",
    examples: ["leather_calf", "none"],
  }),
  process: word({
    required: false,
    allowed: vocabulary.photoProcesses,
    help: "How a photograph was made.",
    examples: ["", ""],
  }),
  has: words({
    required: false,
    allowed: vocabulary.has,
    help: "Things on it that have rules of their own.",
    examples: ["metal_clasps", ""],
  }),
  leaves: wholeNumber({
    required: false,
    min: 1,
    max: 100_000,
    help: "Number of leaves or sheets, counted.",
    examples: ["120", "2"],
  }),
  height_mm: number({
    required: false,
    min: 1,
    max: 100_000,
    unit: "mm",
    help: "Height.",
    examples: ["330", "640"],
  }),
  width_mm: number({
    required: false,
    min: 1,
    max: 100_000,
    unit: "mm",
    help: "Width; for a roll its length.",
    examples: ["220", "910"],
  }),
  thickness_mm: number({
    required: false,
    min: 0.01,
    max: 5000,
    unit: "mm",
    help: "Thickness.",
    examples: ["35", "1"],
  }),
  mass_kg: number({
    required: false,
    min: 0.001,
    max: 500,
    unit: "kg",
    help: "Mass.",
    examples: ["1.8", "0.2"],
  }),
  date_earliest: year({
    required: false,
    help: "Earliest year it may have been made.",
    examples: ["1810", "1895"],
  }),
  date_latest: year({
    required: false,
    help: "Latest year it may have been made.",
    examples: ["1832", "1902"],
  }),
  arrives: day({ required: false, help: "Day of arrival.", fallback: "already here", examples: ["", ""] }),
  due: day({ required: false, help: "Camera wanted by this day.", examples: ["2026-07-17", ""] }),
  priority: word({
    required: false,
    allowed: ["must", "want"],
    help: "Whether it must be done by the end.",
    fallback: "want",
    examples: ["must", "want"],
  }),
  found_in: text({
    required: false,
    help: "Box or shelf it was found in.",
    examples: ["shelf 3", "press 1"],
  }),
  custodian_rule: text({
    required: false,
    help: "The owner's handling rule; shown on the card.",
    examples: ["", "Kept face up"],
  }),
  restricted_view: yesOrNo({
    required: false,
    help: "Whether not everyone may see it.",
    fallback: "no",
    examples: ["no", "no"],
  }),
  neighbours_unchecked: yesOrNo({
    required: false,
    help: "Whether what lay beside it has not been looked at.",
    fallback: "no",
    examples: ["no", "no"],
  }),
};

export const itemsTable: Table<typeof columns> = {
  name: "items",
  title: "Items",
  help: "Everything that has a number and a custodian, one row each.",
  columns,
  key: ["item"],
  links: {},
  mostRows: 100_000,
  aboutPeople: false,
};
