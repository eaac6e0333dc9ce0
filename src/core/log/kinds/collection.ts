import { z } from "zod";
import { act, code, day, facts, freeText, label, minute, part, role, word } from "../_internals/fields.ts";
import { first, item, type Subject } from "../_internals/kind.ts";

const millimetres = z.number().min(0).max(100_000);
const answer = z.union([label(80), z.number()]);
const tested = { item: code, part, test: word, answer } as const;
const test = (p: { readonly part: string; readonly test: string }): string[] => [
  `finding ${p.test} ${p.part}`,
];
const question = (p: { readonly question: string; readonly item?: string }): Subject[] => [
  `question:${p.question}`,
  ...(p.item === undefined ? [] : item({ item: p.item })),
];

/** Items, what was found on them, where they are, and what was said about them. */
export const collectionKinds = {
  itemListed: first(
    z.strictObject({
      item: code,
      title: label(1000),
      facts,
      priority: z.enum(["must", "want"]),
      due: day.exactOptional(),
      arrives: day.exactOptional(),
      heightMm: millimetres.exactOptional(),
      widthMm: millimetres.exactOptional(),
      thicknessMm: millimetres.exactOptional(),
      foundIn: label(500).exactOptional(),
      custodianRule: label(2000).exactOptional(),
    }),
    { about: item, matters: () => ["listing"] },
  ),
  partListed: first(z.strictObject({ item: code, part: code, facts }), {
    about: item,
    matters: (p) => [`part ${p.part}`],
  }),
  findingRecorded: first(
    z.strictObject({
      ...tested,
      day: day.exactOptional(),
      minute: minute.exactOptional(),
      by: code.exactOptional(),
    }),
    { about: item, matters: test },
  ),
  /** People looked again together: this answer stands for those it saw. */
  disagreementSettled: first(
    z.strictObject({ ...tested, day, by: z.array(code).min(1).max(10).readonly() }),
    {
      about: item,
      matters: test,
    },
  ),
  itemMoved: first(
    z.strictObject({
      item: code,
      room: z.enum(["Door", "Ward", "Bench", "Camera", "Shelf"]),
      bag: code.exactOptional(),
      shelf: code.exactOptional(),
      freezer: z.boolean().exactOptional(),
      day,
      minute: minute.exactOptional(),
    }),
    { about: item, matters: () => ["place"] },
  ),
  promiseMade: first(z.strictObject({ item: code, act, day, to: role }), {
    about: item,
    matters: (p) => [`promise ${p.act}`],
  }),
  noteWritten: first(z.strictObject({ item: code, part, text: freeText }), {
    about: item,
    said: ({ text }) => [text],
  }),
  /** To the adviser, under a short name of its own: `Q-07`. */
  questionAsked: first(
    z.strictObject({ question: code.max(40), item: code.exactOptional(), text: freeText }),
    {
      about: question,
      said: ({ text }) => [text],
    },
  ),
  questionAnswered: first(
    z.strictObject({ question: code.max(40), item: code.exactOptional(), text: freeText }),
    { about: question, said: ({ text }) => [text] },
  ),
} as const;
