import type { Project } from "../../src/core/plan/list-schedule/project.ts";

/** A published problem of tasks that share resources, with what is known about its makespan. */
export interface ProjectProblem {
  readonly kind: "project";
  readonly name: string;
  readonly project: Project;
  readonly known: KnownMakespan;
}

/** Jobs that pass every machine in one order, with setups between them. */
export interface FlowShop {
  readonly kind: "flow shop";
  readonly name: string;
  /** Minutes of job, machine. */
  readonly processing: readonly (readonly number[])[];
  /** Minutes on a machine, after a job, before a job. */
  readonly setup: readonly (readonly (readonly number[])[])[];
  readonly known: KnownMakespan;
}

/** What others have found; null: not given in the file. */
export interface KnownMakespan {
  readonly best: number | null;
  readonly lowerBound: number | null;
}

export type PublishedProblem = ProjectProblem | FlowShop;
