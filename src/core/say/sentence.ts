import type { Problem } from "../outcome/problem.ts";

/** What is the matter, without the place and without the remedy; lower case, with its full stop. */
export type Sentence = (problem: Problem) => string;

/** The value as it stood in the file. */
export const got = (p: Problem): string =>
  p.got === undefined || p.got === "" ? "nothing" : `"${shortened(p.got)}"`;
/** For counts and lists, which are not quoted from the file. */
export const plain = (p: Problem): string => p.got ?? "something";
export const expected = (p: Problem): string => p.expected ?? "something else";

const shortened = (text: string): string => (text.length > 80 ? `${text.slice(0, 77)}…` : text);
