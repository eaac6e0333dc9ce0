import { createRequire } from "node:module";
import PDFDocument from "pdfkit";
import type { BenchCardView } from "../../src/edge/papers/views.ts";

const MARGIN = 37; // points, 13 mm
const { resolve: locate } = createRequire(import.meta.url);
const REGULAR = locate("@expo-google-fonts/noto-sans/400Regular/NotoSans_400Regular.ttf");
const BOLD = locate("@expo-google-fonts/noto-sans/700Bold/NotoSans_700Bold.ttf");

/** The words of bench cards by pdfkit (a general-purpose PDF library): one column, the same fonts, no signs, no codes, no tags. */
export function pdfkitCards(cards: readonly BenchCardView[]): Promise<Uint8Array> {
  const document = new PDFDocument({ size: "A4", margin: MARGIN, autoFirstPage: false });
  const parts: Buffer[] = [];
  document.on("data", (part: Buffer) => parts.push(part));
  const written = new Promise<Uint8Array>((resolve) => {
    document.on("end", () => resolve(new Uint8Array(Buffer.concat(parts))));
  });
  for (const card of cards) {
    document.addPage();
    document.font(BOLD).fontSize(42).text(card.item);
    document.fontSize(16).text(card.title);
    document.font(REGULAR).fontSize(11);
    for (const line of linesOf(card)) document.text(line);
    document.fontSize(8.2);
    for (const { rule, text, source } of card.reasons) document.text(`${rule} ${text} (${source})`);
  }
  document.end();
  return written;
}

const linesOf = (card: BenchCardView): string[] => [
  card.format,
  ...card.parts,
  card.where,
  card.conditions.join(", "),
  card.custodianRule,
  ...card.steps.map((step) =>
    [step.room, step.act, ...step.methods, step.minutes, ...step.protection, ...step.uses].join(", "),
  ),
  ...card.never,
  ...card.notYet.map(({ action, until }) => `${action}: ${until}`),
  ...card.stops,
  ...card.askWho,
  ...card.lookBefore,
  ...card.lookAfter,
];
