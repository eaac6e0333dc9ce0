import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import { addDays, type Day } from "../../core/units/day.ts";

/** An entry of a calendar: a whole day, or a stretch of it on the clock of the house, wherever the reader sits. */
export interface CalendarEvent {
  /** What it is about, the same in every print of the campaign: from it comes the entry's lasting name. */
  readonly about: readonly string[];
  readonly day: Day;
  /** Minutes after midnight; null: the whole day. */
  readonly clock: { readonly from: number; readonly to: number } | null;
  readonly summary: string;
  readonly description: string;
}

/** A calendar as RFC 5545 text. Times are floating, as a campaign keeps the clock of its house; the stamp is the plan's morning, so that the same plan gives the same bytes. */
export function icalText(
  name: string,
  campaign: string,
  morning: Day,
  events: readonly CalendarEvent[],
): string {
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Leafward//Campaign calendar//EN",
    "CALSCALE:GREGORIAN",
    `NAME:${escaped(name)}`, // RFC 7986
    `X-WR-CALNAME:${escaped(name)}`,
    ...events.flatMap((event) => eventLines(campaign, morning, event)),
    "END:VCALENDAR",
  ];
  return `${lines.map(folded).join("\r\n")}\r\n`;
}

function eventLines(campaign: string, morning: Day, event: CalendarEvent): string[] {
  const { day, clock, summary, description } = event;
  const when = clock
    ? [`DTSTART:${compact(day)}T${clockText(clock.from)}`, `DTEND:${compact(day)}T${clockText(clock.to)}`]
    : [
        `DTSTART;VALUE=DATE:${compact(day)}`,
        `DTEND;VALUE=DATE:${compact(addDays(day, 1))}`,
        "TRANSP:TRANSPARENT",
      ];
  return [
    "BEGIN:VEVENT",
    `UID:${uidOf([campaign, ...event.about])}`,
    `DTSTAMP:${compact(morning)}T000000Z`,
    ...when,
    `SUMMARY:${escaped(summary)}`,
    `DESCRIPTION:${escaped(description)}`,
    "END:VEVENT",
  ];
}

const compact = (day: Day): string => day.replaceAll("-", "");

function clockText(minutes: number): string {
  const whole = Math.min(24 * 60 - 1, Math.max(0, Math.round(minutes)));
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${two(Math.floor(whole / 60))}${two(whole % 60)}00`;
}

/** A UUID of version 8 (RFC 9562) made of what the entry is about, so that a later print replaces the earlier. */
function uidOf(about: readonly string[]): string {
  const hex = bytesToHex(sha256(utf8ToBytes(JSON.stringify(about))));
  const variant = "89ab".charAt(Number.parseInt(hex.charAt(16), 16) % 4);
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    `${variant}${hex.slice(17, 20)}`,
    hex.slice(20, 32),
  ].join("-");
}

/** TEXT of RFC 5545 3.3.11; control characters, which it does not allow, become spaces. */
const escaped = (text: string): string =>
  text
    .replace(/\r\n|\r/g, "\n")
    .replace(/[\u0000-\u0009\u000b-\u001f\u007f\p{Cs}]/gu, " ")
    .replace(/[\\;,]/g, "\\$&")
    .replace(/\n/g, "\\n");

const MOST_OCTETS = 75;

/** Lines of at most 75 octets, never cut inside a letter's bytes; RFC 5545 3.1. */
function folded(line: string): string {
  const parts: string[] = [];
  let part = "";
  let octets = 0;
  for (const letter of line) {
    const more = Buffer.byteLength(letter);
    if (octets + more > MOST_OCTETS) {
      parts.push(part);
      [part, octets] = ["", 1]; // the space that begins a line of the fold
    }
    part += letter;
    octets += more;
  }
  return [...parts, part].join("\r\n ");
}
