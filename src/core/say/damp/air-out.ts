import type { AiringAdvice, AiringHours } from "../../physics/air/airing.ts";
import { degrees, duration, moment, percent } from "./quantities.ts";

/* Whether to open the windows. */

const airWords = ({ dryBulb, relHum }: { dryBulb: number; relHum: number }, ratio: number): string =>
  `${degrees(dryBulb)}, ${percent(relHum)}: ${(1000 * ratio).toFixed(1)} g of water in a kilogram of air`;

export function sayAiringVerdict(advice: AiringAdvice, wets: boolean): string {
  const grams = Math.abs(1000 * advice.difference).toFixed(1);
  if (wets) return "Keep the windows shut: the air outside would leave dew on the coldest surface inside.";
  if (advice.windows === "open")
    return `Open the windows now: each kilogram of air that is changed carries ${grams} g of water out.`;
  if (advice.windows === "keep-shut")
    return `Keep the windows shut: each kilogram of outside air would bring ${grams} g of water in.`;
  return `It makes no sure difference: inside and outside differ by ${grams} g of water in a kilogram of air, within what the readers may err. Leave the windows shut.`;
}

export const AIRING_TODO: Readonly<Record<AiringAdvice["windows"], readonly string[]>> = {
  open: [
    "Open opposite windows wide for 10 to 20 minutes while someone stays, then shut them and read the loggers again.",
    "Lift or cover what lies loose, and keep mouldy things bagged: a draught carries spores.",
  ],
  "keep-shut": [
    "Keep windows and doors shut, and dry with a dehumidifier if the room must come down.",
    "Ask again when the weather changes, or at another hour of the day.",
  ],
  unsure: ["Ask again when the weather has changed; dry with a dehumidifier meanwhile."],
};

export const AIRING_CAUTIONS: Readonly<Record<"rain" | "dust" | "pests" | "security", string>> = {
  rain: "Never in rain, mist or snow, nor with sprinklers or wet scaffolding before the window.",
  dust: "Not in dust, sand, smoke, pollen or heavy traffic: what settles on the items costs more hours than the damp.",
  pests: "Screens on every open window, and shut before dusk: insects, rodents, birds and bats come in.",
  security: "Somebody stays in the room the whole time; shut and lock afterwards, and keep escape ways free.",
};

export function airingFigures(of: {
  inside: { dryBulb: number; relHum: number };
  outside: { dryBulb: number; relHum: number };
  ratios: readonly [number, number];
  advice: AiringAdvice;
  at: number | null;
  hours: AiringHours | null;
}): { label: string; value: string }[] {
  const { advice, hours } = of;
  return [
    ...(of.at === null ? [] : [{ label: "Read at", value: moment(of.at) }]),
    { label: "Inside", value: airWords(of.inside, of.ratios[0]) },
    { label: "Outside", value: airWords(of.outside, of.ratios[1]) },
    {
      label: "Difference",
      value: `outside carries ${Math.abs(1000 * advice.difference).toFixed(1)} ± ${(1000 * advice.error).toFixed(1)} g/kg ${advice.difference >= 0 ? "less" : "more"} (readers 3 % off)`,
    },
    {
      label: "If all air changed",
      value: `the room would come to ${advice.relHumThen > 1 ? "100 % and dew" : percent(advice.relHumThen)} at its present warmth`,
    },
    ...(hours === null || Number.isNaN(hours.hoursAWeek)
      ? []
      : [
          {
            label: "Airing dries",
            value: `${Math.round(hours.hoursAWeek)} of 168 hours a week, from ${duration(hours.comparedHours)} with both loggers`,
          },
          { label: "Best hours", value: bestHours(hours.byHourOfDay) },
        ]),
  ];
}

/** The hours of the day in which airing dries at least half the time, as spans. */
function bestHours(shares: Float64Array): string {
  const isGood = Array.from(shares, (share) => share >= 0.5);
  if (isGood.every(Boolean)) return "any hour of the day, more often than not";
  const starts = isGood.flatMap((good, hour) => (good && !isGood[(hour + 23) % 24] ? [hour] : []));
  const clock = (hour: number): string => `${String(hour % 24).padStart(2, "0")}:00`;
  const spans = starts.map((start) => {
    let end = start;
    while (isGood[end % 24]) end++;
    return `${clock(start)} to ${clock(end)}`;
  });
  return spans.length === 0 ? "none in which it dries more often than not" : spans.join(" and ");
}

export const sayClocks = (same: boolean): string =>
  same
    ? "Both clocks were put to one time by the offsets in the files."
    : "The files do not both say how far their clocks are ahead of UTC: they were taken to show the same time (--offset +02:00 sets both).";
