import { atWorkViews } from "./at-work/views.ts";
import { benchViews } from "./bench/views.ts";
import { cameraViews } from "./camera/views.ts";
import { climateViews } from "./climate/views.ts";
import { doorViews } from "./door/views.ts";
import { itemViews } from "./item/views.ts";
import type { Now } from "./log/now.ts";
import { planViews } from "./plan/views.ts";
import { questionViews } from "./questions/views.ts";
import { settingsViews } from "./settings/views.ts";
import { todayViews } from "./today/views.ts";
import { wallsViews } from "./walls/views.ts";
import { wardViews } from "./ward/views.ts";

/** Every question a screen may ask of the campaign as this device knows it: pure functions of this minute, by name. */
export const VIEWS = {
  ...wallsViews,
  ...settingsViews,
  ...todayViews,
  ...itemViews,
  ...atWorkViews,
  ...benchViews,
  ...cameraViews,
  ...wardViews,
  ...climateViews,
  ...doorViews,
  ...planViews,
  ...questionViews,
} as const;

export type Views = typeof VIEWS;
export type ViewName = keyof Views;
export type ViewArgs<N extends ViewName> = Views[N] extends (now: Now, ...args: infer A) => unknown
  ? A
  : never;
export type ViewResult<N extends ViewName> = ReturnType<Views[N]>;
