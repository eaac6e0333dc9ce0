import PDFDocument from "pdfkit";
import type { BenchCardView } from "../../src/edge/papers/views.ts";

const MARGIN = 37; // points, 13 mm

/** The words of bench cards by pdfkit (a general-purpose PDF library): one column, its own Helvetica, no signs, no codes, no tags. */
export function pdfkitCards(cards: readonly BenchCardView[]): Promise<Uint8Array> {
  const document = new PDFDocument({ size: "A4", margin: MARGIN, autoFirstPage: false });
  const parts: Buffer[] = [];
  document.on("data", (part: Buffer) => parts.push(part));
  const written = new Promise<Uint8Array>((resolve) => {
    document.on("end", () => resolve(new Uint8Array(Buffer.concat(parts))));
  });
  for (const card of cards) {
    document.addPage();
    document.font("Helvetica-Bold").fontSize(42).text(card.item);
    document.fontSize(16).text(card.title);
    document.font("Helvetica").fontSize(11);
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
