import { parseArgs } from "node:util";
import { sayProblem } from "../../core/say/problems.ts";
import { dayFrom } from "../../core/units/day.ts";
import { KeepFault } from "../../edge/keep/keep.ts";
import { BrokenPlan } from "./broken-plan.ts";
import { decideFromInput } from "./decide.ts";
import { HELP } from "./help.ts";

const out = (line: string): void => {
  process.stdout.write(`${line}\n`);
};
const complain = (line: string): void => {
  process.stderr.write(`${line}\n`);
};

// A reader such as `head` that has seen enough closes the pipe: no fault of anybody.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
});

type Command = (args: string[], say: typeof out, complainOf: typeof complain) => Promise<number>;
/** Commands that read their own options and have a `--help` of their own. */
const OWN_OPTIONS: Readonly<Record<string, () => Promise<Command>>> = {
  air: async () => (await import("./damp/air.ts")).air,
  "air-out": async () => (await import("./damp/air-out.ts")).airOut,
  dry: async () => (await import("./damp/dry.ts")).dry,
  gel: async () => (await import("./damp/gel.ts")).gel,
  mix: async () => (await import("./damp/mix.ts")).mix,
  papers: async () => (await import("./papers.ts")).papers,
  keep: async () => (await import("./keep.ts")).keepSheets,
  carry: async () => (await import("./carry.ts")).carry,
  backup: async () => (await import("./backup.ts")).backupLog,
  restore: async () => (await import("./restore.ts")).restoreLog,
  verify: async () => (await import("./verify.ts")).verifyLog,
  programme: async () => (await import("./programme.ts")).programmeList,
  work: async () => (await import("./work.ts")).workQueue,
  serve: async () => (await import("./serve.ts")).serve,
  ease: async () => (await import("./ease.ts")).easeCommand,
  replan: async () => (await import("./replan.ts")).replanCommand,
  stop: async () => (await import("./stop.ts")).stop,
  sample: async () => (await import("./sample.ts")).sample,
  stores: async () => (await import("./stores.ts")).stores,
  "what-if": async () => (await import("./what-if.ts")).whatIf,
  wrap: async () => (await import("./house.ts")).wrap,
  cut: async () => (await import("./cut.ts")).cut,
  sizes: async () => (await import("./sizes.ts")).sizes,
  "clear-air": async () => (await import("./damp/clear-air.ts")).clearAir,
};

/** Exit codes: 0 well; 1 something must be mended, the rest was done; 2 nothing could be done; 70 a fault of ours. */
async function run(args: string[]): Promise<number> {
  const own = OWN_OPTIONS[args[0] ?? ""];
  if (own) return (await own())(args.slice(1), out, complain);
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      out: { type: "string" },
      today: { type: "string" },
      sheet: { type: "string", default: "A4" },
      cards: { type: "string", default: "soon" },
      port: { type: "string" },
      all: { type: "boolean", default: false },
      help: { type: "boolean", short: "h", default: false },
    },
  });
  const [command, folder, ...after] = positionals;
  const takesItem = ["why", "ask", "ward", "ready"].includes(command ?? "");
  const [item] = takesItem ? after : [];
  const more = takesItem ? after.slice(1) : after;
  if (values.help || command === undefined || command === "help") {
    out(HELP);
    return 0;
  }
  const today = values.today === undefined ? undefined : dayFrom(values.today);
  if (today === null) return refuse(`--today ${values.today}: expected a day such as 2026-06-01.`);
  const { sheet } = values;
  if (sheet !== "A4" && sheet !== "Letter") return refuse(`--sheet ${sheet}: expected A4 or Letter.`);
  if (values.cards !== "soon" && values.cards !== "all")
    return refuse(`--cards ${values.cards}: expected soon or all.`);
  if (more.length > 0)
    return refuse(
      `"${more.join(" ")}" is too much: ${command} takes one folder${takesItem ? " and one item" : ""}. Put a folder with spaces in quotes.`,
    );
  const papers = { sheet, allCards: values.cards === "all" } as const;
  switch (command) {
    case "decide":
      return decideFromInput(process.stdin, out, complain);
    case "why":
      return folder && item
        ? (await import("./why.ts")).whyItem(folder, item, out, complain)
        : refuse(
            "leafward why needs a folder and an item, for example: npx leafward why demo/saltmere SR-0402",
          );
    case "ask":
      return folder
        ? (await import("./ask.ts")).askFolder({ folder, item, all: values.all, out, complain })
        : needsFolder("ask");
    case "ready":
      return folder
        ? (await import("./ready.ts")).readyItems(folder, item, out, complain)
        : needsFolder("ready");
    case "ward":
      return folder
        ? (await import("./ward.ts")).wardOfFolder({ folder, item, today, out, complain })
        : needsFolder("ward");
    case "prove":
      return (await import("./prove.ts")).proveRules(folder, out, complain);
    case "check":
      return folder
        ? (await import("./check.ts")).checkFolder(folder, out, { all: values.all })
        : needsFolder("check");
    case "new":
      return folder ? (await import("./new.ts")).newFolder(folder, out) : needsFolder("new");
    case "plan":
      return folder
        ? (await import("./plan.ts")).planCommand({
            folder,
            today,
            outFolder: values.out,
            papers,
            out,
            complain,
          })
        : needsFolder("plan");
    case "start":
      return (await import("./start.ts")).startCommand({
        folder,
        today,
        outFolder: values.out,
        port: portOf(values.port),
        papers,
        out,
        complain,
      });
    default:
      return refuse(`There is no command "${command}".\n\n${HELP}`);
  }
}

const portOf = (text: string | undefined): number | undefined =>
  text && /^\d+$/.test(text) ? Number(text) : undefined;

function refuse(words: string): number {
  complain(words);
  return 2;
}

const needsFolder = (command: string): number =>
  refuse(`leafward ${command} needs a campaign folder, for example: npx leafward ${command} demo/saltmere`);

try {
  process.exitCode = await run(process.argv.slice(2));
} catch (error) {
  if (error instanceof TypeError && "code" in error && String(error.code).startsWith("ERR_PARSE_ARGS"))
    process.exitCode = refuse(`${error.message}\n\n${HELP}`);
  else if (error instanceof KeepFault) process.exitCode = refuse(sayProblem(error.problem));
  else if (error instanceof BrokenPlan) {
    complain(`${error.message}\nThe plan is not shown. This is a fault of Leafward's own: please report it.`);
    process.exitCode = 70;
  } else {
    complain(
      `Leafward met a fault of its own, not of your data. Please report it with these lines:\n${error instanceof Error ? error.stack : error}`,
    );
    process.exitCode = 70;
  }
}
