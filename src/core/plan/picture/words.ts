import type { Day } from "../../units/day.ts";
import type { DrawnStore } from "./drawn-stores.ts";
import type { DrawnPerson, PlanPicture } from "./plan-picture.ts";

/** The words on the picture, written elsewhere so that it can be drawn in any language. */
export interface PictureWords {
  readonly title: (picture: PlanPicture) => string;
  readonly subtitle: (picture: PlanPicture) => string;
  /** The whole picture in sentences, for who cannot see it. */
  readonly alternative: (picture: PlanPicture) => string;
  readonly people: string;
  readonly limit: (person: DrawnPerson) => string;
  readonly cleanWork: string;
  readonly ward: string;
  readonly wardLimit: (litres: number) => string;
  readonly camera: string;
  readonly cameraMost: (minutes: number) => string;
  readonly stores: string;
  readonly storeLabel: (store: DrawnStore) => string;
  readonly storeFirst: (store: DrawnStore) => string;
  readonly out: (day: Day) => string;
  readonly delivery: (quantity: number) => string;
  readonly finish: (picture: PlanPicture) => string;
  readonly end: (day: Day) => string;
  readonly month: (day: Day) => string;
  readonly week: (day: Day) => string;
  readonly year: (day: Day) => string;
  readonly time: (picture: PlanPicture) => string;
  readonly key: {
    readonly bar: string;
    readonly limit: string;
    readonly away: string;
    readonly clean: string;
    readonly used: string;
    readonly open: string;
    readonly delivery: string;
    readonly out: string;
    readonly order: string;
    readonly range: string;
  };
}
