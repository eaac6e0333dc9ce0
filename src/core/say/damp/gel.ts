import { degrees, digits, gelGrams, litres, percent, percentSpan } from "./quantities.ts";

/* How much silica gel a bag needs. */

export function sayGelVerdict(of: {
  charges: readonly { readonly dryMass: number; readonly relHumAfter: number }[];
  to: number;
  low: number;
  high: number;
  isReached: boolean;
  conditioned: number | null;
}): string {
  const fresh = of.conditioned === null ? "fresh dry gel" : `gel that was left at ${percent(of.conditioned)}`;
  const [first] = of.charges;
  if (first === undefined) return "No gel is needed: the bag rests at the wanted humidity already.";
  const total = of.charges.reduce((sum, { dryMass }) => sum + dryMass, 0);
  if (!of.isReached)
    return `Gel alone will not do: after ${of.charges.length} changes the bag would still rest at ${percent(of.charges.at(-1)?.relHumAfter ?? 0)}.`;
  if (of.charges.length === 1)
    return `Put in ${gelGrams(first.dryMass)} of ${fresh}: the bag then comes to rest at about ${percent(of.to)} (${percentSpan(of.low, of.high)}).`;
  return `It takes ${of.charges.length} changes of gel, ${gelGrams(first.dryMass)} of ${fresh} at the first and never more than it bears at one time, ${gelGrams(total)} in all, to come to rest at about ${percent(of.to)}.`;
}

export const GEL_TODO = {
  apart: (): string =>
    "Lay the gel in a perforated box or behind tissue, never touching the item; weigh it, date the bag, put a reader in.",
  change: (): string =>
    "Leave each charge until the reader stands still for two days, then change it for the next.",
  read: (): string =>
    "When the reader shows the wanted humidity take the gel out, close the bag, and read after two days: only that counts.",
  noGel: (): string => "Open and fan the item, or dry the air of a separate room: npx leafward dry compares.",
  condition: (floor: number): string =>
    `Gel left in air of ${percent(Math.max(floor, 0.45))} until it gains no more cannot dry the item too far: use it if nobody can look daily (--conditioned ${Math.round(100 * Math.max(floor, 0.45))}).`,
} as const;

export function gelFigures(of: {
  dryMass: number;
  water: number;
  gelMass: number;
  mostGelMass: number;
  startContent: number;
  floor: number;
  charges: readonly { readonly dryMass: number; readonly relHumAfter: number }[];
  packets: { readonly count: number; readonly mass: number; readonly changes: number };
  din: { readonly units: number; readonly days: number };
  oven: {
    readonly low: number;
    readonly high: number;
    readonly hours: { readonly low: number; readonly high: number };
  };
}): { label: string; value: string }[] {
  const most = Number.isFinite(of.mostGelMass)
    ? `${gelGrams(of.mostGelMass)}, so that even gel that holds 15 % more leaves it at ${percent(of.floor)} or above`
    : `no limit: gel of that humidity cannot bring it below ${percent(of.floor)}`;
  return [
    { label: "Water to take up", value: `${gelGrams(of.water)} from ${digits(of.dryMass)} kg of dry matter` },
    { label: "All at once", value: `${gelGrams(of.gelMass)} ± 15 % reach the wanted humidity` },
    { label: "Most at one time", value: most },
    ...(of.charges.length < 2 ? [] : of.charges).slice(0, MOST_CHARGES_SHOWN).map((charge, i) => ({
      label: `Charge ${i + 1}`,
      value: `${gelGrams(charge.dryMass)}, comes to rest at ${percent(charge.relHumAfter)}`,
    })),
    ...(of.charges.length > MOST_CHARGES_SHOWN
      ? [
          {
            label: "and so on",
            value: `${of.charges.length} charges, the last to ${percent(of.charges.at(-1)?.relHumAfter ?? 0)}`,
          },
        ]
      : []),
    {
      label: "Packets",
      value:
        of.packets.count > 0
          ? `${of.packets.count} of ${gelGrams(of.packets.mass)} at one time${of.packets.changes > 1 ? `, changed ${of.packets.changes - 1} times` : ""}`
          : `one of ${gelGrams(of.packets.mass)} is more than the item bears: use loose gel or smaller packets`,
    },
    {
      label: "DIN 55474 units",
      value: `${Math.ceil(of.din.units - 1e-9)} for ${of.din.days} days, the item's own water counted in`,
    },
    {
      label: "Drying gel again",
      value: `${of.oven.low} to ${of.oven.high} °C for ${of.oven.hours.low} to ${of.oven.hours.high} h, until two weighings an hour apart differ by less than half a per cent`,
    },
  ];
}
const MOST_CHARGES_SHOWN = 6;

export const sayGelCase = (of: {
  material: string;
  mass: number;
  from: number;
  to: number;
  dryBulb: number;
  bag: number;
  isBagAssumed: boolean;
  floor: number;
  conditioned: number | null;
  days: number;
}): string =>
  `I took it as ${digits(of.mass, 3)} kg of ${of.material} at ${percent(of.from)}, to come down to ${percent(of.to)} and never below ${percent(of.floor)}, at ${degrees(of.dryBulb)}, with ${litres(of.bag)} of air in the bag${of.isBagAssumed ? " (assumed; --bag says otherwise)" : ""}${of.days > 0 ? `, ${of.days} days of leak through the film counted` : ""}.`;
