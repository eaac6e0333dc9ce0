/* Quantities as the damp commands write them: in as the physics has them (fractions, °C, hours, kg), out with their units, rounded as
 * coarsely as they are known. */

/** With thousands parted: `1,250`. */
export const grouped = (n: number): string => n.toLocaleString("en-GB", { maximumFractionDigits: 6 });
/** To so many digits that count: 2 for what is known within a tenth or worse, 3 for what is weighed. */
export const digits = (n: number, count = 2): string => grouped(Number(n.toPrecision(count)));

/** A fraction as whole per cent, as no hygrometer tells more. */
export const percent = (fraction: number): string => `${Math.round(100 * fraction)} %`;
export const percentSpan = (low: number, high: number): string =>
  `${Math.round(100 * low)} to ${Math.round(100 * high)} %`;
/** A strength: to a tenth of a per cent where it is not whole. */
export const strength = (fraction: number): string => `${Number((100 * fraction).toFixed(1))} %`;
export const degrees = (dryBulb: number): string => `${Number(dryBulb.toFixed(1))} °C`;

/** `25 min`, `7 h`, `36 h`, from two days on `12 days`. */
export function duration(hours: number): string {
  if (hours < 0.995) return `${Math.round(60 * hours)} min`;
  if (hours < 10) return `${Number(hours.toFixed(1))} h`;
  if (hours < 48) return `${Math.round(hours)} h`;
  const days = hours / 24;
  return `${days < 10 ? Number(days.toFixed(1)) : grouped(Math.round(days))} days`;
}
/** Units a span of hours is told in, by its longer end. */
const spanUnit = (hours: number): { unit: string; hours: number } =>
  hours >= 72 ? { unit: "days", hours: 24 } : { unit: "h", hours: 1 };
/** Two ends in one unit, two digits each, nothing finer than an hour: `3 to 9 h`, `12 to 110 days`. */
export function durationSpan(low: number, high: number): string {
  if (high < 1) return "less than an hour";
  const { unit, hours } = spanUnit(high);
  const [first, last] = [low / hours, high / hours].map((n) => (n < 1 ? "less than 1" : digits(n)));
  return `${first === last ? last : `${first} to ${last}`} ${unit}`;
}
/** One span of hours, two digits. */
export const about = (hours: number): string => durationSpan(hours, hours);

/** kg as `120 g` or `1.2 kg`, two digits. */
export const gelGrams = (kg: number): string => (kg < 0.9995 ? `${digits(1000 * kg)} g` : `${digits(kg)} kg`);
export const weighed = (grams: number): string =>
  grams < 1000 ? `${digits(grams, 3)} g` : `${digits(grams / 1000, 4)} kg`;
export const measured = (millilitres: number): string =>
  millilitres < 1000 ? `${digits(millilitres, 3)} mL` : `${digits(millilitres / 1000, 3)} L`;
export const litres = (cubicMetres: number): string => `${digits(1000 * cubicMetres)} L`;
/** Whole minutes, up; from three hours on `3 h 40 min`. */
export function minutes(n: number): string {
  const whole = Math.ceil(n - 1e-9);
  if (whole < 180) return `${whole} min`;
  return `${Math.floor(whole / 60)} h${whole % 60 === 0 ? "" : ` ${whole % 60} min`}`;
}

/** A moment, hours since 1970-01-01: `12 June 2026, 14:00`. */
export function moment(hours: number): string {
  const at = new Date(Math.round(hours * 60) * 60_000);
  const day = new Intl.DateTimeFormat("en-GB", { dateStyle: "long", timeZone: "UTC" }).format(at);
  return `${day}, ${at.toISOString().slice(11, 16)}`;
}
