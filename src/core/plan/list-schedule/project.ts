/** One way of doing a task: how long, and how much of each resource while it lasts. */
export interface TaskWay {
  readonly duration: number;
  readonly demand: readonly number[];
}

/** A task with one or more ways of doing it, and what may start only when it has ended. */
export interface ProjectTask {
  readonly ways: readonly TaskWay[];
  readonly successors: readonly number[];
}

/** Tasks that follow each other and share what there is of each resource. Times and quantities are whole numbers, 0 or more. */
export interface Project {
  readonly capacities: readonly number[];
  readonly tasks: readonly ProjectTask[];
}

/** When each task starts and which of its ways is taken. */
export interface ProjectSchedule {
  readonly starts: readonly number[];
  readonly ways: readonly number[];
  readonly makespan: number;
}

/** A project read in one direction of time: forwards as it is, or backwards with the arrows turned round. */
export interface Network {
  readonly count: number;
  readonly capacities: readonly number[];
  readonly ways: readonly (readonly TightWay[])[];
  readonly before: readonly Int32Array[];
  readonly after: readonly Int32Array[];
}

/** A way with the resources it does not need left out. */
export interface TightWay {
  readonly duration: number;
  readonly resources: Int32Array;
  readonly needs: Int32Array;
}

/** The project forwards and backwards.   Throws when a task can never be done: it needs more than there is, or follows itself. */
export function networksOf(project: Project): { readonly forwards: Network; readonly backwards: Network } {
  const { capacities, tasks } = project;
  const after = tasks.map(({ successors }) => Int32Array.from(successors));
  const before = turned(after);
  const ways = tasks.map((task) => task.ways.map(tightWay));
  const forwards = { count: tasks.length, capacities, ways, before, after };
  tasks.forEach((task, at) => {
    if (!task.ways.some(({ demand }) => demand.every((need, r) => need <= (capacities[r] ?? 0))))
      throw new Error(`Task ${at} needs more than there is of a resource in every way of doing it.`);
  });
  orderOf(forwards);
  return { forwards, backwards: { ...forwards, before: after, after: before } };
}

function tightWay({ duration, demand }: TaskWay): TightWay {
  const resources = Int32Array.from([...demand.keys()].filter((r) => (demand[r] ?? 0) > 0));
  return { duration, resources, needs: resources.map((r) => demand[r] ?? 0) };
}

function turned(after: readonly Int32Array[]): Int32Array[] {
  const before: number[][] = after.map(() => []);
  after.forEach((tasks, at) => {
    for (const task of tasks) before[task]?.push(at);
  });
  return before.map((tasks) => Int32Array.from(tasks));
}

/** Tasks so that none stands before one it follows, lowest number first.   Throws when the arrows close a circle. */
export function orderOf({ count, before, after }: Network): number[] {
  const waitsFor = before.map((tasks) => tasks.length);
  const order = waitsFor.flatMap((waits, at) => (waits === 0 ? [at] : []));
  for (let place = 0; place < order.length; place++)
    for (const next of after[order[place] as number] as Int32Array)
      if (--(waitsFor[next] as number) === 0) order.push(next);
  if (order.length < count)
    throw new Error("Some tasks follow themselves in a circle, so none of them can start.");
  return order;
}

/** Length of the longest chain from a task's start to the end, each task in its quickest way. */
export function tailsOf(network: Network): Int32Array {
  const tails = new Int32Array(network.count);
  for (const at of orderOf(network).reverse()) {
    const quickest = Math.min(...(network.ways[at] ?? []).map(({ duration }) => duration));
    tails[at] =
      quickest + Math.max(0, ...Array.from(network.after[at] as Int32Array, (next) => tails[next] ?? 0));
  }
  return tails;
}

/** A makespan no schedule can beat: the longest chain, or the work of one resource shared out over all there is of it. */
export function leastMakespan(network: Network): number {
  const shares = network.capacities.map((capacity, r) => {
    const work = network.ways.reduce(
      (sum, ways) => sum + Math.min(...ways.map((way) => way.duration * needOf(way, r))),
      0,
    );
    return capacity > 0 ? Math.ceil(work / capacity) : 0;
  });
  return Math.max(0, ...tailsOf(network), ...shares);
}

const needOf = (way: TightWay, resource: number): number => way.needs[way.resources.indexOf(resource)] ?? 0;
