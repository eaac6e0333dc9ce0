import type { WatchCaution } from "../../physics/mould/mould-watch.ts";

/** What a person must know beside the mould watch, one sentence a code. */
export const CAUTIONS: Readonly<Record<WatchCaution, string>> = {
  "no-readings":
    "There are no two readings within six hours of each other, so nothing can be said: look at the objects.",
  "vtt-alone-is-no-all-clear":
    "The mould index was made for wood and is exactly nought below 80 %: alone it never means that all is well.",
  "quiet-is-no-all-clear":
    "No lamp is lit, but the logger tells only of the place where it lies: look at the objects as well, the coldest corner first.",
  "index-blind-below-80":
    "The index sees nothing here, yet the moulds of sized paper, leather and dirt grow from 65 %: trust the other lamps.",
  "second-opinion-disagrees":
    "The mould index and the dose model do not agree on this series: take the worse of the two and look at the objects.",
  "series-has-gaps":
    "Readings are missing for more than six hours: each stretch was judged by itself, and what grew in between is not counted.",
  "air-not-surface":
    "Only the air was measured: a colder wall or shelf back is damper than this, so measure the coldest surface too.",
  "reading-above-saturation":
    "Some readings are above 100 % and were taken as 100 %: have the logger checked.",
  "warmer-than-fitted":
    "It was warmer than 30 °C at times, beyond what the limits were made from: they were held at 30 °C, and mould may be faster.",
};
