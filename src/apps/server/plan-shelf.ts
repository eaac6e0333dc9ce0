import type { Plan } from "../../core/plan/plan.ts";
import type { WhatIfService } from "../../edge/solve/what-if-service.ts";
import { rosterOf } from "./roster.ts";
import { shownOnPage } from "./shown-on-page.ts";
import { workOf } from "./work-of.ts";

/** A plan with what belongs to it. */
export interface PageOptions {
  readonly plan: Plan;
  /** The plan drawn, as SVG. */
  readonly picture: string;
  /** Folder whose PDFs the page offers; it may not exist yet. */
  readonly papersFolder: string;
  /** Answers what-if questions; left out: the page has none. Closed with the server, and when another plan takes this one's place. */
  readonly whatIf?: WhatIfService;
}

/** A plan in the forms it is asked for, each as JSON. */
export interface PlanTexts {
  readonly plan: string;
  readonly page: string;
  readonly roster: string;
  readonly work: string;
}

/** The plan people work by, as the server shows it; null: none was made yet. An accepted one takes its place while the server runs. */
export class PlanShelf {
  #page: PageOptions | null;
  #texts: PlanTexts | null;

  constructor(page: PageOptions | null) {
    this.#page = page;
    this.#texts = page && textsOf(page.plan);
  }

  now(): PageOptions | null {
    return this.#page;
  }

  texts(): PlanTexts | null {
    return this.#texts;
  }

  async put(page: PageOptions): Promise<void> {
    const before = this.#page;
    this.#page = page;
    this.#texts = textsOf(page.plan);
    await before?.whatIf?.close();
  }
}

const textsOf = (plan: Plan): PlanTexts => ({
  plan: JSON.stringify(plan),
  page: JSON.stringify(shownOnPage(plan)),
  roster: JSON.stringify(rosterOf(plan)),
  work: JSON.stringify(workOf(plan)),
});
