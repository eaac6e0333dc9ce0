import type { HeatCaution } from "../../physics/people/heat.ts";

/** What a person must know beside a heat outlook, one sentence a code. */
export const CAUTIONS: Readonly<Record<HeatCaution, string>> = {
  "heat-stop-or-move-the-work":
    "Too hot to work here: stop, move to a cooler room or to dawn; do not lighten the mask or the coverall instead.",
  "heat-new-people-rest":
    "People in their first days of heat do a fifth of a day's work on the first day, and a fifth more each day.",
  "heat-rest-outside":
    "Take rests in a cool room outside the mould zone, and work in pairs who watch each other.",
  "heat-mask-stays-on":
    "The mask stays on in the mould zone however hot it is: heat is answered with rest, shade and time of day.",
  "heat-drink-outside":
    "Drink about a glass (240 ml) every 15 to 20 minutes, outside the zone, with clean hands.",
  "heat-no-vapour-barrier":
    "A suit that lets no vapour through cannot be worn in a hot room: use breathable coveralls.",
  "heat-no-fans-over-tables":
    "No fans over tables with mould: cool the people, not the items, by extraction, shade and a cool room for rests.",
  "heat-stroke-signs":
    "Confusion, or a hot body that no longer sweats, is an emergency: call for help at once and cool with water and air.",
  "heat-estimated-without-globe":
    "The figure was estimated from air and humidity and may be a degree out; in sun or beside hot roofs it is too low.",
  "heat-follow-local-rules": "Follow local rules and licensed practice; this is a guide.",
};
