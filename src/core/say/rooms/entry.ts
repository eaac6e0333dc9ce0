import type { TypedDoubt } from "../../ward/typed-doubt.ts";

/** Words of typing a figure with gloves on. */
export const entry = {
  pad: "Number keys",
  erase: "Erase the last digit",
  point: "Decimal point",
  sign: "Below nought, or above",
  save: "Write it down",
  missing: "Type the figure first.",
  before: (value: string, when: string) => `Before: ${value}, ${when}`,
  nothingBefore: "Nothing before",
  sure: (value: string) => `Yes, ${value} is right`,
  again: "Type it again",
  doubt: {
    impossible: (value: string) => `${value} cannot be. Look again, and type it again.`,
    unusual: (value: string) => `${value} is unusual. Is it right?`,
    "far-from-before": (value: string, before: string) =>
      `${value} is far from ${before} before. Is it right?`,
  } satisfies Record<TypedDoubt, (value: string, before: string) => string>,
} as const;
