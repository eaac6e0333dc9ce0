import { store } from "./house.ts";
import type { CalendarRow, StoreRow } from "./rows.ts";

/** Days on which nobody is in. */
export const closed = (from: string, note: string, to?: string): CalendarRow => ({
  from,
  ...(to ? { to } : {}),
  who: "everyone",
  what: "closed",
  note,
});

/** The stores any such campaign keeps, scaled by how big it is. */
export const usualStores = (size: number): StoreRow[] => [
  store(
    "masks",
    "Disposable respirators without valve",
    "k-mask",
    "pc",
    Math.round(140 * size),
    20,
    42,
    "air",
  ),
  store("gloves", "Nitrile gloves, three sizes", "k-gloves", "pairs", Math.round(400 * size), 50, 28, "air"),
  store("aprons", "Aprons with sleeves", "k-apron", "pc", Math.round(120 * size), 50, 42, "sea"),
  store("hair", "Hair covers", "k-hair", "pc", Math.round(250 * size), 100, 28, "air"),
  store("wipes", "Lint-free wipes", "k-cloth", "pc", Math.round(1500 * size), 500, 28, "air"),
  store("ethanol", "Ethanol, 70 %", "k-eth", "L", Math.round(10 * size), 5, 14, "local"),
  store("table-cover", "Table paper and film", "k-cover", "m2", Math.round(200 * size), 50, 7, "local"),
  store("waste-bags", "Waste bags", "k-bags-waste", "pc", Math.round(200 * size), 50, 5, "local"),
  store("sponges", "Rubber sponge blocks", "k-sponge-light", "pc", Math.round(100 * size), 24, 56, "air"),
  store("gel", "Silica gel, orange, dry", "k-gel", "kg", Math.round(15 * size), 5, 42, "air"),
  store("bags", "Zip polyethylene bags", "k-bag", "pc", Math.round(200 * size), 100, 7, "local"),
  store("readers", "Humidity cards", "k-reader", "pc", Math.round(60 * size), 30, 42, "air"),
  store("labels", "Solvent-proof labels", "k-label", "pc", Math.round(1500 * size), 500, 14, "local"),
];
