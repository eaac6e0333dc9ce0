/** What the leaves of a format are made of by its very name; `unknown` where they may be of several things, for somebody to look. */
const USUAL: Readonly<Record<string, string>> = {
  palm_leaf_bundle: "palm_leaf",
  bark_manuscript: "bark",
  parchment_document: "parchment",
  glass_negative: "glass",
  film_negative: "film_unknown",
};

/** The material a newly listed item is taken to be of until somebody says better. Common practice, no source. */
export const usualSupport = (format: string): string => USUAL[format] ?? "unknown";
