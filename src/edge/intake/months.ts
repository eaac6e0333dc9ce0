/** Languages whose month names are understood, long and short, as the platform's locale data (Unicode CLDR) writes them. */
const LANGUAGES = ["en", "de", "fr", "es", "pt", "it", "nl", "id"];

/** Month name in lower case, without a dot → 1 to 12. A short form that means two months in two languages is left out. */
export const MONTHS: ReadonlyMap<string, number> = monthNames();

function monthNames(): Map<string, number> {
  const found = new Map<string, number>();
  const clashes = new Set<string>();
  for (const language of LANGUAGES)
    for (const month of ["long", "short"] as const) {
      const format = new Intl.DateTimeFormat(language, { month, timeZone: "UTC" });
      const inDate = new Intl.DateTimeFormat(language, { month, day: "numeric", timeZone: "UTC" });
      for (let n = 1; n <= 12; n++) {
        const day = new Date(Date.UTC(2026, n - 1, 15));
        const part = inDate.formatToParts(day).find((each) => each.type === "month")?.value ?? "";
        for (const written of [format.format(day), part]) add(found, clashes, written, n);
      }
    }
  add(found, clashes, "sept", 9);
  for (const name of clashes) found.delete(name);
  return found;
}

function add(found: Map<string, number>, clashes: Set<string>, written: string, n: number): void {
  const name = written.toLowerCase().normalize("NFC").replace(/\.$/, "");
  const before = found.get(name);
  if (before !== undefined && before !== n) clashes.add(name);
  found.set(name, n);
}
