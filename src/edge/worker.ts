import { Worker } from "node:worker_threads";

/** A worker from its module's address without ending: the built file, or, when run from the sources, the TypeScript one through its loader. */
export function startWorker(module: URL): Worker {
  if (!import.meta.url.endsWith(".ts")) return new Worker(new URL(`${module.href}.js`));
  const load = `import("tsx/esm/api").then(({ register }) => { register(); return import(${JSON.stringify(`${module.href}.ts`)}); })`;
  return new Worker(load, { eval: true });
}
