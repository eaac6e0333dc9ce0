/* Quantities as a person types them, "1.5kg", "12 L", "80 %", into the units the physics has. */

/** What a quantity measures: its units, each with what it is in the first one; `bare` is meant where no unit is typed. */
export interface Measure {
  readonly name: string;
  readonly units: Readonly<Record<string, number>>;
  readonly bare: string | null;
  /** How it is shown in a refusal, and by what the stored value is multiplied there. */
  readonly shown: { readonly unit: string; readonly times: number };
  readonly example: string;
}

const plain = (unit: string): Measure["shown"] => ({ unit, times: 1 });

/** Stored in the unit whose factor is 1: kg, m³, m, m³/h, 1/h, fraction, days. Temperatures are apart, as °F has another nought. */
export const MEASURES = {
  mass: {
    name: "a mass with its unit",
    units: { kg: 1, g: 1e-3, lb: 0.45359237, oz: 0.028349523125 },
    bare: null,
    shown: plain("kg"),
    example: "1.5kg or 300g",
  },
  volume: {
    name: "a volume",
    units: { m3: 1, "m³": 1, l: 1e-3, litre: 1e-3, litres: 1e-3, ml: 1e-6, ft3: 0.3048 ** 3 },
    bare: null,
    shown: { unit: "L", times: 1000 },
    example: "12L",
  },
  liquid: {
    name: "a volume of liquid",
    units: { l: 1e-3, litre: 1e-3, litres: 1e-3, ml: 1e-6 },
    bare: "ml",
    shown: { unit: "mL", times: 1e6 },
    example: "1000 (mL) or 1L",
  },
  space: {
    name: "the volume of a room",
    units: { m3: 1, "m³": 1, ft3: 0.3048 ** 3 },
    bare: "m3",
    shown: plain("m³"),
    example: "40m3",
  },
  relHum: {
    name: "a relative humidity in per cent",
    units: { "%": 0.01, "%rh": 0.01 },
    bare: "%",
    shown: { unit: "%", times: 100 },
    example: "80",
  },
  strength: {
    name: "a strength by volume in per cent",
    units: { "%": 0.01 },
    bare: "%",
    shown: { unit: "%", times: 100 },
    example: "70",
  },
  millimetres: {
    name: "a length in millimetres",
    units: { mm: 1e-3, cm: 1e-2, m: 1 },
    bare: "mm",
    shown: { unit: "mm", times: 1000 },
    example: "5",
  },
  length: {
    name: "a length",
    units: { mm: 1, cm: 10, in: 25.4, pt: 0.0254 },
    bare: "mm",
    shown: plain("mm"),
    example: "0.5 (mm) or 20pt",
  },
  metres: {
    name: "a length in metres",
    units: { m: 1, cm: 1e-2, ft: 0.3048 },
    bare: "m",
    shown: plain("m"),
    example: "3",
  },
  airChanges: {
    name: "air changes an hour",
    units: { "/h": 1, "1/h": 1 },
    bare: "/h",
    shown: plain("an hour"),
    example: "2",
  },
  airFlow: {
    name: "clean air in m³/h",
    units: { "m3/h": 1, "m³/h": 1, cfm: 0.3048 ** 3 * 60 },
    bare: "m3/h",
    shown: plain("m³/h"),
    example: "300",
  },
  hours: {
    name: "hours",
    units: { h: 1, min: 1 / 60, days: 24, d: 24 },
    bare: "h",
    shown: plain("h"),
    example: "24",
  },
  days: {
    name: "days",
    units: { d: 1, day: 1, days: 1, h: 1 / 24, weeks: 7 },
    bare: "days",
    shown: plain("days"),
    example: "14",
  },
  kelvin: {
    name: "kelvin (degrees of difference)",
    units: { k: 1, "°c": 1, c: 1 },
    bare: "k",
    shown: plain("K"),
    example: "-3",
  },
  count: { name: "a number", units: {}, bare: "", shown: plain(""), example: "3" },
} as const satisfies Readonly<Record<string, Measure>>;
export type MeasureName = keyof typeof MEASURES;

const NUMBER = String.raw`[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)`;
const QUANTITY = new RegExp(`^\\s*(${NUMBER})\\s*(.*?)\\s*$`);

/** A number with a decimal point or comma. A comma before exactly three digits could also part thousands: null, as it is not known. */
export function numberFrom(text: string): number | null {
  if (!new RegExp(`^${NUMBER}$`).test(text.trim()) || /,\d{3}$/.test(text.trim())) return null;
  return Number(text.trim().replace(",", "."));
}

/** The quantity in the unit whose factor is 1; null when it cannot be read. */
export function quantityFrom(text: string, measure: Measure): number | null {
  const [, digits, unit] = QUANTITY.exec(text) ?? [];
  const value = digits === undefined ? null : numberFrom(digits);
  if (value === null || unit === undefined) return null;
  const wanted = unit === "" ? measure.bare : unit.toLowerCase();
  if (wanted === null) return null;
  if (wanted === measure.bare && measure.bare === "") return value;
  const factor = measure.units[wanted];
  return factor === undefined ? null : value * factor;
}

/** °C from "26", "26 C", "26°C", "79F". */
export function celsiusFrom(text: string): number | null {
  const [, digits, unit] = QUANTITY.exec(text) ?? [];
  const value = digits === undefined ? null : numberFrom(digits);
  if (value === null) return null;
  const scale = (unit ?? "").replace("°", "").toLowerCase();
  if (scale === "" || scale === "c") return value;
  return scale === "f" ? ((value - 32) * 5) / 9 : null;
}

/** "26 C 70 %" as a temperature (°C) and a relative humidity (0 to 1); the temperature comes first. */
export function airFrom(text: string): { dryBulb: number; relHum: number } | null {
  const [, warm, damp] =
    new RegExp(`^\\s*(${NUMBER}\\s*°?\\s*[CFcf]?)[\\s,;/]+(${NUMBER}\\s*%?)\\s*(?:rh|RH)?\\s*$`).exec(text) ??
    [];
  if (warm === undefined || damp === undefined) return null;
  const dryBulb = celsiusFrom(warm.replace(/\s+/g, ""));
  const relHum = quantityFrom(damp, MEASURES.relHum);
  return dryBulb === null || relHum === null ? null : { dryBulb, relHum };
}

/** "300x220x45" as lengths in the unit whose factor is 1; null unless there are as many as wanted. */
export function lengthsFrom(text: string, measure: Measure, count: number): number[] | null {
  const unit = /(mm|cm|m|ft|in)\s*$/i.exec(text)?.[1] ?? "";
  const parts = text.slice(0, text.length - unit.length).split(/\s*[x×*]\s*/i);
  const lengths = parts.map((part) => quantityFrom(part.trim() + unit, measure));
  return lengths.length === count && lengths.every((each) => each !== null) ? (lengths as number[]) : null;
}

/** "0:80, 3:72" as pairs of numbers, a day first; null when a pair cannot be read. */
export function pairsFrom(text: string): { day: number; value: number }[] | null {
  const pairs = text.split(/[,;\s]+(?=[^,;\s]*:)/).map((pair) => {
    const [day, value, ...more] = pair.replace(/[,;\s]+$/, "").split(":");
    const [a, b] = [numberFrom(day ?? ""), numberFrom((value ?? "").replace(/\s*(%|g)$/, ""))];
    return a === null || b === null || more.length > 0 ? null : { day: a, value: b };
  });
  return pairs.every((pair) => pair !== null) ? (pairs as { day: number; value: number }[]) : null;
}

/** Tokens that are no argument of their own but the unit of the number before them, as in `--purifier 300 m3/h`. */
const LONE_UNIT =
  /^(%|°?[CF]|K|kg|g|lb|oz|L|mL|ml|l|m3|m³|m3\/h|m³\/h|cfm|mm|cm|m|in|pt|h|min|days?|weeks|litres?)$/;
const NEGATIVE = /^-[\d.]/;

/** Arguments with lone units joined to their numbers, and negative values joined to their options, so that `--offset -05:00` is understood. */
export function joined(args: readonly string[]): string[] {
  const result: string[] = [];
  for (const arg of args) {
    const last = result.at(-1);
    if (last !== undefined && LONE_UNIT.test(arg) && /\d$/.test(last))
      result[result.length - 1] = `${last} ${arg}`;
    else if (last !== undefined && NEGATIVE.test(arg) && /^--[a-z-]+$/.test(last))
      result[result.length - 1] = `${last}=${arg}`;
    else result.push(arg);
  }
  return result;
}
