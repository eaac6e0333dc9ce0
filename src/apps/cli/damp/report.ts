import { OutOfRange } from "../../../core/physics/out-of-range.ts";
import { sayFault, sayOptionFault, sayOutOfRange } from "../../../core/say/damp/faults.ts";
import { DAMP_HEADS } from "../../../core/say/damp/heads.ts";
import { wrapped } from "../wrapped.ts";
import { Given, type OptionKinds, Refusal } from "./given.ts";

/* An answer as a person reads it: what was understood, the verdict, what to do, the figures, what to mind. The same as JSON. */

export type Out = (line: string) => void;
/** A damp command. @returns 0 well · 1 something must be mended or danger was found · 2 it could not be done */
export type DampCommand = (args: string[], out: Out, complain: Out) => Promise<number>;

export interface Figure {
  readonly label: string;
  readonly value: string;
}
export interface Caution {
  readonly code: string;
  readonly sentence: string;
}
export interface Section {
  /** What was understood of the input, a sentence each. */
  readonly understood: readonly string[];
  readonly verdict: string;
  readonly todo: readonly string[];
  readonly figures: readonly Figure[];
  readonly cautions: readonly Caution[];
  /** Figures for machines, SI units and fractions, the unit in the name. */
  readonly data: Readonly<Record<string, unknown>>;
}
export interface Report {
  readonly sections: readonly Section[];
  /** After the last section, e.g. a comparison; first line the heading. */
  readonly closing?: readonly string[];
  readonly closingData?: unknown;
  readonly exit: 0 | 1;
}

interface Command {
  readonly name: string;
  readonly help: string;
  readonly options: OptionKinds;
}

/** Reads the options, works, and prints; what cannot be done is said in sentences and ends in 2. */
export async function answered(
  { name, help, options }: Command,
  [args, out, complain]: [string[], Out, Out],
  work: (given: Given) => Report | Promise<Report>,
): Promise<number> {
  try {
    if (args.includes("--help") || args.includes("-h")) {
      out(help);
      return 0;
    }
    const given = new Given(args, options);
    const report = await work(given);
    if (given.has("json")) out(JSON.stringify(asJson(name, report), null, 2));
    else print(report, out);
    return report.exit;
  } catch (error) {
    const lines = faultLines(name, error);
    if (lines === null) throw error;
    for (const line of lines) for (const part of wrapped(line, "", "  ")) complain(part);
    return 2;
  }
}

/** What to say of a fault of the input; null for a fault of ours. */
function faultLines(name: string, error: unknown): readonly string[] | null {
  if (error instanceof Refusal) return error.lines;
  if (error instanceof OutOfRange) return [sayOutOfRange(error)];
  const isOption =
    error instanceof TypeError && String("code" in error && error.code).startsWith("ERR_PARSE_ARGS");
  return isOption ? [sayOptionFault(name, error.message)] : null;
}

/** Caution codes with their sentences, each once, in the order given. */
export const cautionsOf = <Code extends string>(
  codes: readonly Code[],
  sentences: Readonly<Record<Code, string>>,
): Caution[] => [...new Set(codes)].map((code) => ({ code, sentence: sentences[code] }));

/** The first of each sentence: one caution may come with several figures. */
const onceEach = (cautions: readonly Caution[]): Caution[] =>
  cautions.filter(({ sentence }, at) => cautions.findIndex((each) => each.sentence === sentence) === at);

const asJson = (command: string, { sections, closingData, exit }: Report) => ({
  command,
  answers: sections.map(({ understood, verdict, todo, cautions, data }) => ({
    understood,
    verdict,
    todo,
    ...data,
    cautions: onceEach(cautions),
  })),
  ...(closingData === undefined ? {} : { comparison: closingData }),
  exit,
});

function print({ sections, closing }: Report, out: Out): void {
  sections.forEach((section, at) => {
    if (at > 0) out("");
    printSection(section, out);
  });
  if (closing === undefined) return;
  out("");
  for (const line of closing) out(line);
}

function printSection({ understood, verdict, todo, figures, cautions }: Section, out: Out): void {
  for (const line of understood) print100(line, "", out);
  if (understood.length > 0) out("");
  print100(verdict, "", out);
  list(DAMP_HEADS.todo, todo, (at) => `  ${at + 1}. `, out);
  if (figures.length > 0) {
    out("");
    out(DAMP_HEADS.figures);
    const width = Math.max(...figures.map(({ label }) => label.length)) + 2;
    for (const { label, value } of figures)
      for (const line of wrapped(value, `  ${label.padEnd(width)}`, " ".repeat(width + 2))) out(line);
  }
  list(
    DAMP_HEADS.cautions,
    onceEach(cautions).map(({ sentence }) => sentence),
    () => "  - ",
    out,
  );
}

function list(head: string, lines: readonly string[], mark: (at: number) => string, out: Out): void {
  if (lines.length === 0) return;
  out("");
  out(head);
  lines.forEach((line, at) => {
    for (const part of wrapped(line, mark(at), " ".repeat(mark(at).length))) out(part);
  });
}

const print100 = (line: string, indent: string, out: Out): void => {
  for (const part of wrapped(line, indent, indent)) out(part);
};

/** A fault that is no one option's. */
export const cannot = (code: Parameters<typeof sayFault>[0], ...words: string[]): Refusal =>
  new Refusal([sayFault(code, ...words)]);
