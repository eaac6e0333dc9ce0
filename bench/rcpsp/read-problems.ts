import { readFileSync } from "node:fs";
import { basename, extname } from "node:path";
import { z } from "zod";
import type { FlowShop, KnownMakespan, ProjectProblem, PublishedProblem } from "./published-problem.ts";

const whole = z.number().int().nonnegative();
const bounds = {
  name: z.string(),
  optimal: whole.nullish(),
  upperBound: whole.nullish(),
  bestKnown: whole.nullish(),
  lowerBound: whole.nullish(),
};
const projectShape = z.object({
  ...bounds,
  capacities: z.array(whole),
  tasks: z.array(z.object({ duration: whole, demand: z.array(whole), successors: z.array(whole) })),
});
const jobShopShape = z.object({
  ...bounds,
  machines: whole,
  jobs: z.array(z.array(z.record(z.string(), whole))),
});
const flowShopShape = z.object({
  ...bounds,
  processing: z.array(z.array(whole)),
  setup: z.array(z.array(z.array(whole))),
});
const machineShape = z.object({
  ...bounds,
  optimalMakespan: whole.nullable().default(null),
  processing: z.array(whole),
  setup: z.array(z.array(whole)),
});
const instanceShape = z.union([projectShape, jobShopShape, flowShopShape, machineShape]);
const fileShape = z.object({ instances: z.array(instanceShape) });

/** The problems of a file: JSON with `instances` (projects, flexible job shops, setup flow shops, one machine with setups), or one project in Patterson's text form. */
export function readProblems(path: string): readonly PublishedProblem[] {
  const text = readFileSync(path, "utf8");
  if (extname(path).toLowerCase() !== ".json") return [patterson(basename(path), text)];
  const file = fileShape.safeParse(JSON.parse(text));
  if (!file.success)
    throw new Error(
      `${path} is not a file of scheduling problems. Expected { "instances": [...] }, each with capacities and tasks, machines and jobs, or processing and setup.\n${z.prettifyError(file.error)}`,
    );
  return file.data.instances.map((instance) => {
    if ("tasks" in instance) return projectOf(instance);
    if ("jobs" in instance) return jobShop(instance);
    return "optimalMakespan" in instance ? oneMachine(instance) : flowShop(instance);
  });
}

const knownOf = (instance: z.infer<z.ZodObject<typeof bounds>>): KnownMakespan => ({
  best: instance.upperBound ?? instance.bestKnown ?? instance.optimal ?? null,
  lowerBound: instance.optimal ?? instance.lowerBound ?? null,
});

const projectOf = (instance: z.infer<typeof projectShape>): ProjectProblem => ({
  kind: "project",
  name: instance.name,
  known: knownOf(instance),
  project: {
    capacities: instance.capacities,
    tasks: instance.tasks.map(({ duration, demand, successors }) => ({
      ways: [{ duration, demand }],
      successors,
    })),
  },
});

/** Every operation is a task, every machine it may go on a way of doing it. */
function jobShop(instance: z.infer<typeof jobShopShape>): ProjectProblem {
  const only = (machine: number): number[] =>
    Array.from({ length: instance.machines }, (_, at) => (at === machine ? 1 : 0));
  let first = 0;
  const tasks = instance.jobs.flatMap((operations) => {
    const start = first;
    first += operations.length;
    return operations.map((machines, at) => ({
      ways: Object.entries(machines).map(([machine, duration]) => ({
        duration,
        demand: only(Number(machine)),
      })),
      successors: at + 1 < operations.length ? [start + at + 1] : [],
    }));
  });
  const capacities = Array.from({ length: instance.machines }, () => 1);
  return { kind: "project", name: instance.name, known: knownOf(instance), project: { capacities, tasks } };
}

const flowShop = ({ name, processing, setup, ...rest }: z.infer<typeof flowShopShape>): FlowShop => ({
  kind: "flow shop",
  name,
  processing,
  setup,
  known: knownOf({ name, ...rest }),
});

/** One machine is a flow shop that ends at its first. */
const oneMachine = ({
  name,
  processing,
  setup,
  optimalMakespan,
}: z.infer<typeof machineShape>): FlowShop => ({
  kind: "flow shop",
  name,
  processing: processing.map((time) => [time]),
  setup: [setup],
  known: { best: optimalMakespan, lowerBound: optimalMakespan },
});

/** Tasks, resources; capacities; then of each task duration, demands, number of successors, successors counted from 1. */
export function patterson(name: string, text: string): ProjectProblem {
  const words = text.split(/\s+/).filter((word) => word !== "");
  let place = 0;
  const next = (what: string): number => {
    const word = words[place++];
    if (word === undefined || !/^\d+$/.test(word))
      throw new Error(
        `${name}, word ${place}: expected ${what}, a whole number, and found ${word === undefined ? "the end of the file" : `"${word}"`}. Patterson's form has numbers only.`,
      );
    return Number(word);
  };
  const several = (count: number, what: string): number[] => Array.from({ length: count }, () => next(what));
  const count = next("the number of tasks");
  const resources = next("the number of resources");
  const capacities = several(resources, "a capacity");
  const tasks = Array.from({ length: count }, () => ({
    ways: [{ duration: next("a duration"), demand: several(resources, "a demand") }],
    successors: several(next("the number of successors"), "a successor").map((one) => one - 1),
  }));
  const stray = tasks.flatMap(({ successors }) => successors).find((one) => one < 0 || one >= count);
  if (stray !== undefined)
    throw new Error(`${name}: a task is followed by task ${stray + 1}, but there are ${count} tasks.`);
  if (place < words.length)
    throw new Error(`${name}: ${words.length - place} numbers too many after the last of ${count} tasks.`);
  return { kind: "project", name, known: { best: null, lowerBound: null }, project: { capacities, tasks } };
}
