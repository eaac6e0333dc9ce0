import { cpus, totalmem } from "node:os";

/** Every bench by the name it is asked for: `npm run bench`, or `npm run bench -- mould drying`; files of published scheduling problems with `-- rcpsp <file>`, of
 *  packing or p-median problems with `-- packing <file or folder>`, `-- assortment <file or folder>`. */
const BENCHES: Readonly<Record<string, () => Promise<unknown>>> = {
  care: async () => (await import("./care.ts")).benchCare(),
  plan: async () => (await import("./plan.ts")).benchPlan(),
  checker: () => import("./checker.ts"),
  gaps: async () => (await import("./plan-gaps.ts")).benchPlanGaps(),
  "what-if": async () => (await import("./what-if.ts")).benchWhatIf(),
  orders: async () => (await import("./orders.ts")).benchOrders(),
  replan: async () => (await import("./replan.ts")).benchReplan(),
  mould: () => import("./mould.ts"),
  drying: () => import("./drying.ts"),
  loggers: () => import("./loggers.ts"),
  log: async () => (await import("./log.ts")).benchLog(),
  keep: async () => (await import("./keep.ts")).benchKeep(),
  papers: async () => (await import("./papers.ts")).benchPapers(),
  programme: async () => (await import("./programme.ts")).benchProgramme(),
};

const asked = process.argv.slice(2);
if (asked[0] === "rcpsp") {
  const { benchRcpsp } = await import("./rcpsp.ts");
  for (const path of asked.slice(1)) await benchRcpsp(path);
  process.exit(asked.length > 1 ? 0 : 2);
}
if (asked[0] === "packing") {
  const { benchPacking } = await import("./packing.ts");
  for (const path of asked.slice(1)) await benchPacking(path);
  process.exit(asked.length > 1 ? (process.exitCode ?? 0) : 2);
}
if (asked[0] === "assortment") {
  const { benchAssortment } = await import("./assortment.ts");
  for (const path of asked.slice(1)) await benchAssortment(path);
  process.exit(asked.length > 1 ? (process.exitCode ?? 0) : 2);
}
const unknown = asked.filter((name) => !(name in BENCHES));
if (unknown.length > 0) {
  console.error(
    `There is no bench "${unknown.join('", "')}". There are: ${Object.keys(BENCHES).join(", ")}.`,
  );
  process.exit(2);
}
console.log(
  `Machine: ${cpus()[0]?.model ?? "unknown"}, ${cpus().length} cores, ${(totalmem() / 2 ** 30).toFixed(0)} GB, Node ${process.version}`,
);
for (const [name, bench] of Object.entries(BENCHES))
  if (asked.length === 0 || asked.includes(name)) {
    console.log(`\n== ${name}`);
    await bench();
  }
