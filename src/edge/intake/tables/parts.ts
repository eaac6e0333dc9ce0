import { type Table, text, wholeNumber, word, words } from "../columns.ts";
import { vocabulary } from "../vocabulary.ts";

const columns = {
  item: text({ required: true, help: "Number of the item it belongs to.", examples: ["B-001", "B-001"] }),
  part: text({
    required: true,
    help: "Name of the part: cover, text block, seal …",
    examples: ["cover", "folded map"],
  }),
  format: word({
    required: false,
    allowed: Object.keys(vocabulary.formats),
    help: "Its format, where it differs from the item's.",
    examples: ["", "map_plan"],
  }),
  support: word({
    required: false,
    allowed: vocabulary.supports,
    help: "What it is made of, where it differs.",
    examples: ["", "paper_rag"],
  }),
  media: words({
    required: false,
    allowed: vocabulary.media,
    help: "What it is written or painted with, where it differs.",
    examples: ["", "watercolour"],
  }),
  cover: word({
    required: false,
    allowed: vocabulary.covers,
    help: "What covers it.",
    examples: ["leather_calf", ""],
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
    help: "Number of leaves or sheets of the part.",
    examples: ["", "1"],
  }),
};

export const partsTable: Table<typeof columns> = {
  name: "parts",
  title: "Parts",
  help: "Pieces of an item that have rules of their own.",
  columns,
  key: ["item", "part"],
  links: { item: "items" },
  mostRows: 300_000,
  aboutPeople: false,
};
