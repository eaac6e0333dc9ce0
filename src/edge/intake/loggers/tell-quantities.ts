/** `14,449` */
export const thousands = (n: number): string => n.toLocaleString("en-GB");

/** `1 row`, `1,440 rows`. */
export const howMany = (n: number, one: string, many = `${one}s`): string =>
  `${thousands(n)} ${n === 1 ? one : many}`;

/** `UTC+2`, `UTC-5:30`, `UTC` for minutes ahead of UTC. */
export function offsetInWords(minutes: number): string {
  if (minutes === 0) return "UTC";
  const size = Math.abs(minutes);
  const rest = size % 60 === 0 ? "" : `:${String(size % 60).padStart(2, "0")}`;
  return `UTC${minutes < 0 ? "-" : "+"}${Math.floor(size / 60)}${rest}`;
}

/** `hour`, `15 minutes`, `30 seconds`, `day`: what follows "every". */
export function stepInWords(minutes: number): string {
  if (minutes === 60) return "hour";
  if (minutes === 1440) return "day";
  if (minutes === 1) return "minute";
  if (minutes > 60 && minutes % 60 === 0) return `${minutes / 60} hours`;
  return minutes >= 1 ? `${trimmed(minutes)} minutes` : `${trimmed(minutes * 60)} seconds`;
}

/** `36 h`, `2.5 h`, `20 min`, from ten days on `12 days`. */
export function hoursInWords(hours: number): string {
  if (hours < 1) return `${Math.round(hours * 60)} min`;
  return hours < 240 ? `${trimmed(hours)} h` : `${Math.round(hours / 24)} days`;
}

const trimmed = (n: number): string => String(Math.round(n * 10) / 10);
