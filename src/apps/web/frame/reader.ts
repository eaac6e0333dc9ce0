import { knownLocale } from "../../../core/say/dates.ts";
import type { Count } from "../../../core/say/page.ts";

/** The reader's own way of writing dates and numbers. */
export const LOCALE = knownLocale(navigator.language);

export const count = (n: number): Count => ({ n, text: new Intl.NumberFormat(LOCALE).format(n) });
