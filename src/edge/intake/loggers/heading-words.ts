import type { DateShape, HumidityUnit, TemperatureUnit } from "./logger-reading.ts";

/** What a heading says its column holds. */
export type ColumnMeaning =
  | "time"
  | "date"
  | "clock"
  | "year"
  | "month"
  | "day"
  | "dayOfYear"
  | "hour"
  | "minute"
  | "number"
  | "temperature"
  | "relHum"
  | "dewPoint"
  | "sensor"
  | "other";

/** Words of headings in English, German, French, Spanish, Portuguese, Italian, Dutch and Indonesian, and the chief words of some more; from memory. */
const PATTERNS: readonly (readonly [ColumnMeaning, RegExp])[] = [
  [
    "other",
    /\b(?:source|uncert\w*|flags?|qc|quality|status|alarm\w*|limits?|set ?points?|soll\w*|consigne)\b/,
  ],
  ["other", /\b(?:wet ?bulb|feuchtkugel\w*|bulbe? humid\w*|bulbo (?:humedo|umido)|natte ?bol|wb)\b/],
  [
    "other",
    /\b(?:abs\w*|ratio|humidityratio|mixing|specific|spezif\w*|mischung\w*|enthalp\w*|vapou?r|vpd)\b|g ?\/ ?(?:m|kg)/,
  ],
  [
    "other",
    /\b(?:apparent\w*|feels|heat index|humidex|wind ?chill|gefuhlt\w*|holz\w*|wood\w*|bodenfeucht\w*|soil moist\w*|material\w*|batt\w*|spannung|volt\w*|akku|pila|calib\w*|kalib\w*|offset|\w*precip\w*|rain\w*|press\w*|druck|co2|light|lux)\b/,
  ],
  [
    "dewPoint",
    /\b(?:dew ?\w*|taup\w*|tau ?punkt\w*|rosee|rocio|orvalho|rugiada|dauw\w*|titik embun|td|tdew|t ?dp|dp)\b/,
  ],
  [
    "relHum",
    /\b(?:\w*humid\w*|\w*feucht\w*|hume\w*|umid\w*|\w*vochtig\w*|hygro\w*|kelembab\w*|kelembap\w*|rhum\w*|rh2m|relh\w*|humi?|moisture|wilgotn\w*|vlhkost\w*|fukt\w*|fugt\w*|kosteus\w*|paratartal\w*|nem)\b|湿度|влажност|υγρασ/,
  ],
  ["relHum", /\b(?:rh|hr|ur|rf|rv|lf|r h|h r|r f|u r|r v)[a-z]?\d*\b|% ?(?:rh|hr|rf|ur|rv|r h)|\b\w{2,}rh\b/],
  [
    "temperature",
    /\b(?:\w*temp\w*|dry ?bulb|drybulb|trockenkugel\w*|warmte|suhu\w*|tair|tmp[cf]?|teplot\w*|t2m|lampotila\w*|homerseklet\w*|sıcaklık\w*|sicaklik\w*)\b|温度|температур|θερμοκρασ/,
  ],
  [
    "temperature",
    /^(?:t|te|ti|ta|tout|tin|t ?\d+|t (?:e|i|a|in|out|int|ext|air)|c|°c|°f|deg c|deg f)(?: (?:°? ?[cfk]|deg ?[cf]))?$/,
  ],
  [
    "time",
    /\b(?:date ?time|datetime|time ?stamp\w*|zeitpunkt|zeitstempel|horodat\w*|date et heure|fecha y hora|fecha hora|data e hora|data ora|data ?\/ ?ora|datum ?tijd|datum ?\/ ?(?:uhr)?zeit|tijdstip|epoch|unix\w*|waktu|measured at|recorded at|moment)\b|时间|時間|日時/,
  ],
  ["date", /\b(?:date|datum|fecha|data|dato|day of record|tanggal)\b|日期|日付|дата/],
  ["clock", /\b(?:time|uhrzeit|zeit|hora|heure|ora|tijd|clock|jam|t utc.*|utc.*|gmt.*)\b/],
  ["year", /^(?:year|yr|yyyy|jahr|annee|ano|anno|jaar|tahun)$/],
  ["month", /^(?:month|mon|mo|mm|monat|mois|mes|mese|maand|bulan)$/],
  ["dayOfYear", /^(?:doy|jday|julian(?: day)?|day of (?:the )?year|yday|dayofyear)$/],
  ["day", /^(?:day|dd|dy|tag|jour|dia|giorno|dag|hari|dom)$/],
  ["hour", /^(?:hour|hr|hh|hrs|hours|stunde|std|heure|hora|ora|uur)$/],
  ["minute", /^(?:minute|min|minutes|mi|minuto|minuut)$/],
  [
    "sensor",
    /\b(?:sensor\w*|logger\w*|device\w*|probe\w*|channel|kanal|capteur|sonde|fuhler|gerat\w*|serial\w*|station\w*|room|raum|salle|sala|location|ort|name)\b/,
  ],
  ["number", /^(?:#|no|nr|n|index|id|row|record|rec|lfd nr|num\w*|numero)$/],
];

/** Units in the heading stand in the way of the words; they are looked at apart. */
export function meaningOf(heading: string): ColumnMeaning | null {
  const plain = plainWords(heading.replace(/[([]\s*(?:hr?s?|min|s|sec|days?)\s*[)\]]/gi, " "));
  if (plain === "") return null;
  const short = plain
    .replace(/\b(?:yyyy|dd|mm|hh|ss|tt|jjjj|aaaa|hh24|mi)\b/g, " ")
    .replace(/ +/g, " ")
    .trim();
  for (const word of short === "" ? [plain] : [short, plain])
    for (const [meaning, pattern] of PATTERNS) if (pattern.test(word)) return refined(meaning, plain);
  return null;
}

/** A whole heading of one of these words is a part of the date, although the word also occurs in others. */
function refined(meaning: ColumnMeaning, plain: string): ColumnMeaning {
  const whole = PATTERNS.find(([part, pattern]) => isPart(part) && pattern.test(plain))?.[0];
  if (meaning === "clock" && whole === "hour" && /^(?:hour|hr|hrs|hours|hh|stunde|std|uur)$/.test(plain))
    return "hour";
  if (meaning === "relHum" && plain === "hr") return "relHum"; // French and Spanish for RH; an hour column has a year beside it
  return meaning;
}

const isPart = (meaning: ColumnMeaning): boolean => /^(?:year|month|day|hour|minute)$/.test(meaning);

/** Lower case, without accents, every run of other signs one space; `°`, `%`, `#` and `/` stay. */
export const plainWords = (heading: string): string =>
  heading
    .replace(/([a-z])([A-Z][a-z])/g, "$1 $2")
    .toLowerCase()
    .normalize("NFKD")
    .replace(/[\u0300-\u036f]/g, "")
    .replace(/[^\p{L}\p{N}°%#/]+/gu, " ")
    .trim()
    .slice(0, 120);

export function temperatureUnitIn(written: string): TemperatureUnit | null {
  const text = written.normalize("NFKC"); // one sign for degree and letter becomes two
  if (
    /°\s?F|º\s?F|\bdeg(?:rees?)?[\s_.]*F\b|fahrenheit|[([_,;\s]F[)\]]?\s*(?:\(|$)|\b(?:tmp|temp)_?f\b|^F$/i.test(
      text,
    )
  )
    return "°F";
  if (/°\s?C|º\s?C|\uFFFD\s?C|\bdeg(?:rees?)?[\s_.]*C\b|celsius|[([_,;\s]C[)\]]?\s*(?:\(|$)|^C$/i.test(text))
    return "°C";
  return /kelvin|[([_,\s]K[)\]]?\s*$|^K$/.test(text) ? "K" : null;
}

export function humidityUnitIn(written: string): HumidityUnit | null {
  const text = written.normalize("NFKC");
  if (/%|percent|prozent|\bpct\b|_pct\b|pour ?cent|por ?c(?:i|e)ento/i.test(text)) return "%";
  return /fraction|anteil|\(0\s*(?:-|–|to|\.\.)\s*1\)|\[\s*-\s*\]|\(\s*-\s*\)/i.test(text)
    ? "fraction"
    : null;
}

/** Letters that stand for day, month and year in a heading: `MM/DD/YYYY`, `TT.MM.JJJJ`, `jj/mm/aaaa`. */
export function dateOrderIn(text: string): DateShape | null {
  if (/\b[yja]{2,4}[-./ ]?m{1,2}[-./ ]?[dtjg]{1,2}\b/i.test(text)) return "y-m-d";
  if (/\bm{1,2}[-./ ][dtjg]{1,2}[-./ ][yja]{2,4}\b/i.test(text)) return "m-d-y";
  return /\b[dtjg]{1,2}[-./ ]m{1,2}[-./ ][yja]{2,4}\b/i.test(text) ? "d-m-y" : null;
}

/** Minutes ahead of UTC in `UTC+2`, `GMT+02:00`, `t_UTC-5:30`; plain `UTC` or `GMT` is 0; null: nothing of the kind. */
export function offsetIn(text: string): number | null {
  const match = /(?:^|[^A-Za-z])(?:UTC|GMT)\s*(?:([+\-−])\s*(\d{1,2})(?::?(\d{2}))?)?(?![A-Za-z_])/i.exec(
    text,
  );
  if (match === null) return null;
  const minutes = Number(match[2] ?? 0) * 60 + Number(match[3] ?? 0);
  return /[-−]/.test(match[1] ?? "") ? -minutes : minutes;
}

/** Means first, least and most last: of several columns of one sensor the plainest is read. */
export function rankOf(heading: string): number {
  const plain = plainWords(heading);
  if (
    /\b(?:min|max|minimum|maximum|low|high|minim\w*|maxim\w*|std|stdev|sd|range|lowest|highest)\b/.test(plain)
  )
    return 3;
  if (/\b(?:surface|soil|ground|oberflach\w*|boden\w*|wall|wand|internal|board|cpu)\b/.test(plain)) return 2;
  return /\b(?:avg|mean|average|mittel\w*|moyen\w*|medi[ao]|gemiddeld\w*)\b/.test(plain) ? 1 : 0;
}

/** What is left of a heading when quantity and unit are taken away: the name of the sensor. */
export function sensorNameIn(heading: string): string {
  return heading
    .replace(/[([]\s*(?:°|º|\uFFFD)?\s*(?:[CFK]|%[^)\]]*|deg[^)\]]*|-|0\s*-\s*1)\s*[)\]]/gi, " ")
    .replace(/(?:°|º|\uFFFD)\s?[CFK]\b|%\s?(?:r\.?h\.?|h\.?r\.?|r\.?f\.?|u\.?r\.?)?/gi, " ")
    .replace(
      /\brel(?:ative[rn]?|ativa|at\w*)?\b\.?|\b(?:air|luft|de|del|da|do|van|der|l|celsius|fahrenheit|percent|deg|pct|c|f)\b|[\p{L}]*(?:temp|humid|feucht|humed|humé|umid|vochtig|suhu|kelemb|dry-?bulb|rhum)[\p{L}.]*|\b2m\b/giu,
      " ",
    )
    .replace(/(^|[^\p{L}\p{N}])(?:RH|HR|UR|RF|RV|LF|T)(?=$|[^\p{L}]|[eiao]\b|(?:in|out|int|ext)\b)/giu, "$1 ")
    .replace(/[\s,;:_|.\-–()[\]'"]+/g, " ")
    .trim();
}
