import {
  quantity,
  STORE_WORDS,
  STORES_CAUTIONS,
  STORES_WORDS,
  sayDays,
  saySubstitute,
} from "../../core/say/stores.ts";
import type { StoreMeans, StoreOutlook } from "../../core/stores/projection/store-outlook.ts";
import { addDays, type Day } from "../../core/units/day.ts";
import { cautionsOf, type Figure, type Report } from "./damp/report.ts";
import type { PlannedFolder } from "./plan-folder.ts";

/** One store: how it runs down, what is on its way, what to send for, what may stand in for it. */
export function storeReport(outlook: StoreOutlook, planned: PlannedFolder, { goods }: StoreMeans): Report {
  const today = planned.campaign.planFrom;
  const { store, orders } = outlook;
  const isShort = outlook.runsOut.p10 !== null;
  const carriage = goods.carriage(store.use);
  return {
    exit: orders.some(({ orderBy, late }) => late || orderBy <= addDays(today, 7)) ? 1 : 0,
    sections: [
      {
        understood: [],
        verdict: STORE_WORDS.verdict(outlook, today),
        todo: [
          ...orders.map((order) => STORES_WORDS.send(order, today)),
          ...(isShort ? [saySubstitute(store.name, goods.substitute(store.use))] : []),
        ],
        figures: figuresOf(outlook, planned, today),
        cautions: [
          ...carriage.map(({ text, status }, at) => ({
            code: `carriage-${at + 1}`,
            sentence: `${text} (${status})`,
          })),
          ...cautionsOf(
            [...(carriage.length > 0 ? (["dangerous-goods"] as const) : []), "estimate"],
            STORES_CAUTIONS,
          ),
        ],
        data: { ...dataOf(outlook), substitute: goods.substitute(store.use), carriage },
      },
    ],
    closing: [STORE_WORDS.chart(store.unit), ...chartOf(outlook, today)],
  };
}

function figuresOf(
  { store, expected, aWeek, onTheWay, orders }: StoreOutlook,
  { stock }: PlannedFolder,
  today: Day,
) {
  const { labels } = STORE_WORDS;
  const counted = stock.counts.get(store.id);
  const own = stock.measured.find(({ use }) => use === store.use);
  const { unit } = store;
  const figures: Figure[] = [
    {
      label: labels.stock,
      value: counted
        ? STORE_WORDS.counted(counted.count.day, counted.count.quantity, counted.usedSince, unit, today)
        : STORE_WORDS.uncounted,
    },
    {
      label: labels.use,
      value: own ? STORE_WORDS.measured(own.factor, own.sessions) : STORE_WORDS.unmeasured,
    },
    {
      label: labels.reorder,
      value: STORE_WORDS.reorder((aWeek * (store.leadDays + 21)) / 7, unit, store.leadDays),
    },
    ...onTheWay.map((each) => ({ label: labels.coming, value: STORE_WORDS.onTheWay(each, unit, today) })),
    ...(store.expires && expected.lost > 0
      ? [{ label: labels.dates, value: STORE_WORDS.lost(expected.lost, unit, store.expires, today) }]
      : []),
    ...orders.slice(0, 1).map((order) => ({ label: labels.packs, value: STORE_WORDS.why(order) })),
  ];
  return figures;
}

const BAR = 48;
const MOST_ROWS = 16;

/** A line every so many weeks to the end: three fillings of one bar for the three lines of use. */
function chartOf({ expected, more, less, onTheWay, orders }: StoreOutlook, today: Day): string[] {
  const days = expected.level.length;
  const most = Math.max(1e-9, ...less.level);
  const step = 7 * Math.max(1, Math.ceil(days / 7 / MOST_ROWS));
  const length = (left: number | undefined): number => Math.round((Math.max(0, left ?? 0) / most) * BAR);
  const ats = Array.from({ length: Math.ceil(days / step) }, (_, n) => n * step);
  return ats.map((at) => {
    const [sure, usual, best] = [more, expected, less].map(({ level }) => length(level[at])) as [
      number,
      number,
      number,
    ];
    const bar =
      "█".repeat(sure) + "▒".repeat(Math.max(0, usual - sure)) + "░".repeat(Math.max(0, best - usual));
    const within = (day: Day): boolean => addDays(today, at) <= day && day < addDays(today, at + step);
    const marks = [
      ...onTheWay.filter(({ day }) => within(day)).map(({ quantity: n }) => `+${quantity(n)}`),
      ...(orders.some(({ orderBy }) => within(orderBy)) ? ["order"] : []),
    ];
    const left = quantity(Math.max(0, expected.level[at] ?? 0));
    return `  ${sayDays(addDays(today, at)).padStart(6)}  ${left.padStart(6)} ${[bar, ...marks].join(" ")}`.trimEnd();
  });
}

/** For machines: without the daily series. */
export const dataOf = ({ store, aWeek, runsOut, onTheWay, orders }: StoreOutlook) => ({
  ...{ store: store.id, name: store.name, use: store.use, unit: store.unit, onHand: store.onHand },
  ...{ aWeek, runsOut, onTheWay, orders },
});
