import type { AiringCaution } from "../../physics/air/airing.ts";
import type { StorageCaution } from "../../physics/rooms/storage.ts";

/** What a person must know beside a store's figures and the advice on airing, one sentence a code. */
export const CAUTIONS: Readonly<Record<StorageCaution | AiringCaution, string>> = {
  "band-from-memory":
    "The figures of this band were recalled, not read: look them up in the standard before you rely on them.",
  "band-superseded":
    "This guidance has been replaced by a later one: use it to understand old buildings, not to plan new ones.",
  "band-tells-no-humidity":
    "The source tells no humidity for this band: ask for it before you set the store.",
  "band-reaches-mould": "The upper end of this band is damp enough for mould: keep well below it.",
  "life-is-a-comparison":
    "This compares two climates for chemical ageing: it does not foretell how many years an item has left.",
  "life-outside-fitted-climate":
    "Some readings are outside 0 to 35 °C or 20 to 80 %, where the comparison is not at home: take it as a hint only.",
  "life-tells-nothing-of-mould":
    "A good chemical figure says nothing of mould, insects or swings: read the mould watch beside it.",
  "airing-not-in-rain-or-dust":
    "Open only while someone is there, and not in rain, mist, dust, smoke or at dusk when insects fly; screens help.",
  "airing-cools-the-room":
    "The air outside is much colder: stop before walls and objects grow cold, or they will be damp afterwards.",
  "airing-would-wet-cold-surfaces":
    "The air outside would leave dew on the coldest surface inside: keep shut.",
  "airing-dries-below-30":
    "Airing for long would bring the room below 30 %: too dry for skin, leather and painted things; watch it.",
  "airing-difference-within-error":
    "The difference is smaller than what the loggers may err: it will help little either way.",
};
