import type { ReleaseCondition, ReleaseMissing, WardCaution } from "../../ward/bag-state.ts";
import type { NoDate, ReadyCaution } from "../../ward/ready-date.ts";
import { CAUTIONS as DRYING } from "./drying.ts";
import { CAUTIONS as SORPTION } from "./sorption.ts";

/** One plain sentence for each caution that travels with a bag's state or a ready date. */
export const CAUTIONS: Readonly<Record<WardCaution | ReadyCaution, string>> = {
  ...SORPTION,
  ...DRYING,
  "person-releases":
    "The readings earn a release; a person who looked at the item gives it. Smell, fresh growth or soft pages outweigh any figure.",
  "gel-speaks-first":
    "There is gel in the bag: the reader shows the gel, not the item. Take the gel out and wait two days before it counts.",
  "reading-is-old": "The last reading is more than a week old: read again before anything is decided.",
  "temperature-moved":
    "The bag was read at different temperatures: cold readings show too little, and were counted as if taken warm.",
  "stop-drying-now":
    "Skin, leaf, wood, lacquer and image layers are not dried below 40 to 45 %: take the gel out now.",
  "over-dried":
    "Below 40 %: this material may curl, crack or flake. Take the gel out, do not unfold or open it, let it come back slowly and ask a conservator.",
  "tail-disagrees":
    "The weighings alone point to another day than the drying model does: weigh again and trust neither until they agree.",
  "one-reader-one-error":
    "The band supposes one reader with one and the same error. A reader that was changed or never checked against a salt makes it wider.",
  "readings-in-open-air-left-out":
    "Readings taken in open air, or within two hours of closing, say nothing about the item and were left out.",
  "planning-figure-only":
    "This band is for planning the campaign. It is no date for this item: too little is known yet.",
};

/** What a release asks for. */
export const RELEASE_CONDITIONS: Readonly<Record<ReleaseCondition, string>> = {
  "bag-is-closed": "The bag is closed.",
  "gel-is-out": "No gel lies in the bag while it is read.",
  "two-readings-pass": "Two readings of 55 % or less, at least 24 hours apart, none above between or after.",
  "error-leaves-room": "The reading with the reader's own error on top stays at 60 % or less.",
  "rebound-is-small": "Two days after closing the bag shows at most 2 % more than when it was closed.",
  "48-hours-below-50": "At least 48 hours below 50 %.",
};

/** What to do next for a release. */
export const RELEASE_MISSING: Readonly<Record<ReleaseMissing, string>> = {
  "close-the-bag": "Close the bag with the reader in it.",
  "take-the-gel-out": "Take the gel out, close the bag and read it now and after two days.",
  "read-it": "Read the closed bag.",
  "read-again-a-day-later": "Read again, at least 24 hours after the first reading that passed.",
  "still-too-damp": "Still too damp: go on drying.",
  "reader-too-coarse":
    "The reader's error is too large for this reading: use a checked reader, or dry further.",
  "read-at-closing": "Close the bag anew and read it within 12 hours.",
  "read-after-two-days": "Read again 48 hours after the bag was closed.",
  "it-came-back": "The damp came back from the core: go on drying.",
  "stay-below-50-longer": "Keep it below 50 % for 48 hours, with readings at both ends.",
};

/** Why there is no date yet, and what would bring one. */
export const NO_DATE: Readonly<Record<NoDate, string>> = {
  "no-closed-reading":
    "No reading of the closed bag from the start of drying: read it before the gel goes in.",
  "no-surroundings": "It is not written down what the item lies in: room or bag, and its humidity.",
  "look-again-a-day-later": "Only one look so far: read or weigh again, at least a day after the first.",
  "no-change-seen": "Nothing has changed beyond what reader and scale are off by: wait for a clear change.",
  "less-than-a-third-dried": "Less than a third of the way is done: too early for a date.",
  "never-in-these-surroundings": "Here it never gets dry enough: change the gel, or move it to a drier room.",
  "perhaps-never-in-these-surroundings":
    "It may not get dry enough here: more or fresher gel, or a drier room, would settle it.",
  "readings-and-model-disagree":
    "The readings do not fit together: check the reader, the bag for leaks, and what was written down.",
  "outside-what-was-tried":
    "It dries far faster or slower than such an item should: check its size, its kind and the readings.",
};
