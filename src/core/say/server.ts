import { expected, plain, type Sentence } from "./sentence.ts";

/** One sentence for each code a device hears from the server, or says when it does not hear it. */
export const SERVER_SENTENCES = {
  "server-away": () => "the laptop is not in reach.",
  "log-not-here": () => "the campaign is not on this device yet.",
  "not-a-code": () => "that is not a code that lets anybody in now.",
  "too-many-codes": () => "too many wrong codes came from here.",
  "not-let-in": () => "this device has not been let in.",
  "not-your-role": (p) => `this is not open to a ${plain(p)}.`,
  "not-your-entry": (p) => `this is not ${expected(p)}.`,
  "other-campaign": (p) => `this was written for another campaign (${plain(p)}).`,
  "unknown-here": () => "the laptop runs an older Leafward, which does not know this kind of entry.",
  "not-a-house-day": () => "these are the days of a person, not of the house.",
  "beyond-the-log": () => "the log on the laptop was put back from a backup.",
  "too-many-requests": () => "this device asked too often.",
  "too-many-streams": () => "too many windows of this device are open.",
  "too-large": () => "that is too large to be sent at once.",
  "not-a-picture": () => "that is not a picture the laptop can keep.",
  "no-picture": () => "no picture came with it.",
  "disk-full": () => "the disk of the laptop is full.",
  "no-such-device": () => "no device of that name is let in.",
} satisfies Record<string, Sentence>;
