import { parseArgs } from "node:util";
import type { Problem } from "../../core/outcome/problem.ts";
import { sayProblem } from "../../core/say/problems.ts";
import { type CarriedIn, campaignOfFolder, carryIn } from "../../edge/carry/carry-in.ts";
import { packed, putCarry } from "../../edge/carry/carry-out.ts";
import { deviceKey, wordsOf } from "../../edge/carry/device-key.ts";
import { deviceCalled, knownDevices } from "../../edge/carry/known-devices.ts";
import { mayHaveLog, openKeep } from "../../edge/keep/open-keep.ts";
import { machineNow } from "./now.ts";

type Out = (line: string) => void;

const HELP = `leafward carry: the log in one signed file, from place to place without a network

  npx leafward carry out <folder> <to>      write everything into a file in the folder <to>, such as a stick
  npx leafward carry in <folder> <file> …   take such files into the log
  npx leafward carry words <folder>         the words of this device, and of those it knows

Files may come in any order and twice. A torn or damaged one gives what is whole of it and says what
is missing; the same file copied again goes on from there. A file of another campaign is refused.
Each device signs with a key of its own. The first file of a device is taken only with its four
words, which you must hear from the people there, not from the file; from then on it is known.
Pictures are named in the file, and not in it: copy the folder pictures/ as well.

  --for <word>     carry out: only what that known device may lack, by the last file it sent here
  --trust <words>  carry in: take files of the device with these words, from now on`;

/** @returns 0 done · 1 done, but something must be looked at · 2 nothing was written or taken */
export async function carry(args: string[], out: Out, complain: Out): Promise<number> {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      for: { type: "string" },
      trust: { type: "string" },
      help: { type: "boolean", short: "h", default: false },
    },
  });
  const [way, folder, ...more] = positionals;
  if (values.help) {
    out(HELP);
    return 0;
  }
  if (way === "words" && folder !== undefined && more.length === 0) return words(folder, out, complain);
  if (way === "out" && folder !== undefined && more[0] !== undefined && more.length === 1)
    return carryOut(folder, more[0], values.for, out, complain);
  if (way === "in" && folder !== undefined && more.length > 0)
    return carryAllIn(folder, more, values.trust, out, complain);
  complain(HELP);
  return 2;
}

function words(folder: string, out: Out, complain: Out): number {
  const key = deviceKey(folder);
  const known = knownDevices(folder);
  if (!key.ok) return refuse(key.problems, complain);
  if (!known.ok) return refuse(known.problems, complain);
  out(`This device: ${wordsOf(key.value.open)}`);
  for (const each of known.value) out(`Known here:  ${wordsOf(each.key)}`);
  return 0;
}

async function carryOut(
  folder: string,
  to: string,
  receiver: string | undefined,
  out: Out,
  complain: Out,
): Promise<number> {
  const campaign = mayHaveLog(folder) ? await campaignOfFolder(folder) : null;
  if (campaign?.ok === false) return refuse(campaign.problems, complain);
  if (!campaign?.value) return refuse([NO_LOG], complain);
  const key = deviceKey(folder);
  if (!key.ok) return refuse(key.problems, complain);
  const known = knownDevices(folder);
  if (!known.ok) return refuse(known.problems, complain);
  const theirs = receiver === undefined ? null : deviceCalled(receiver, known.value);
  if (theirs?.ok === false) return refuse(theirs.problems, complain);
  const keep = await openKeep(folder, "read");
  if (!keep.ok) return refuse(keep.problems, complain);
  const { today: _, stamp, ms } = machineNow();
  const carried = await packed(keep.value, campaign.value, key.value, ms, theirs?.value);
  await keep.value.close();
  if (carried.events === 0) {
    if (theirs === null) return refuse([NO_LOG], complain);
    out("They have everything that is here, by the last file they sent. No file was written.");
    return 0;
  }
  const put = await putCarry(carried, folder, to, key.value, stamp);
  if (!put.ok) return refuse(put.problems, complain);
  out(put.value);
  out(
    `${count(carried.events, "entry", "entries")} of ${campaign.value} in ${count(carried.blocks, "block", "blocks")}, ${count(carried.bytes.length, "byte", "bytes")}${theirs === null ? "" : `; only what ${wordsOf(theirs.value.key)} may lack`}.`,
  );
  out(`Words of this device, for whoever takes its file for the first time: ${wordsOf(key.value.open)}`);
  if (carried.pictures > 0)
    out(
      `${count(carried.pictures, "picture is", "pictures are")} named in it and not in it: copy the folder pictures/ as well.`,
    );
  return 0;
}

const NO_LOG: Problem = {
  code: "carry-no-log",
  severity: "stop",
  remedy: "Begin it from the sheets with npx leafward keep <folder>. Nothing was written.",
};

async function carryAllIn(
  folder: string,
  paths: readonly string[],
  trust: string | undefined,
  out: Out,
  complain: Out,
): Promise<number> {
  let worst = 0;
  let anyTaken = false;
  for (const path of paths) {
    const done = await carryIn(folder, path, trust);
    if (done.ok) {
      anyTaken = true;
      for (const line of carriedLines(done.value)) out(line);
      worst = Math.max(worst, needsALook(done.value) ? 1 : 0);
    } else worst = refuse(done.problems, complain);
  }
  return anyTaken ? Math.min(worst, 1) : worst;
}

const SHOWN = 20;

function carriedLines({
  manifest,
  added,
  known,
  aside,
  asideFile,
  problems,
  newlyKnown,
}: CarriedIn): string[] {
  const lost = aside.length === 0 ? "" : `, ${aside.length.toLocaleString("en-GB")} set aside`;
  const said = [...problems, ...aside.map(({ problem }) => problem)];
  return [
    `${manifest.campaign}, from ${wordsOf(manifest.key)}: ${count(added, "new entry", "new entries")}, ${known.toLocaleString("en-GB")} here already${lost}.`,
    ...(newlyKnown === null
      ? []
      : [
          "Files of this device are taken from now on. Only you know that the words came from its own people.",
        ]),
    ...said.slice(0, SHOWN).map(sayProblem),
    ...(said.length > SHOWN ? [`… and ${said.length - SHOWN} more.`] : []),
    ...(asideFile === null ? [] : [`What was set aside lies in ${asideFile}`]),
  ];
}

const needsALook = ({ problems, aside }: CarriedIn): boolean =>
  aside.length > 0 || problems.some(({ severity }) => severity !== "note");

function refuse(problems: readonly Problem[], complain: Out): number {
  for (const problem of problems.slice(0, SHOWN)) complain(sayProblem(problem));
  return 2;
}

const count = (n: number, one: string, many: string): string =>
  `${n.toLocaleString("en-GB")} ${n === 1 ? one : many}`;
