import { mkdir, readFile, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { type Outcome, type Problem, refused } from "../../core/outcome/problem.ts";
import { readCampaignFolder } from "../intake/read-campaign.ts";
import { diskFailure } from "../keep/backup.ts";
import { KeepFault } from "../keep/keep.ts";
import { campaignHere, codeOf } from "../keep/open-campaign.ts";
import { mayHaveLog, openKeep } from "../keep/open-keep.ts";
import { type CarryFile, readCarry } from "./carry-file.ts";
import { carryFolder, hasKey, wordsOf } from "./device-key.ts";
import { asWords, type KnownDevice, knownDevices, remember } from "./known-devices.ts";
import type { Manifest } from "./manifest.ts";
import { type Aside, type Taken, takeBlocks } from "./take-blocks.ts";

export interface CarriedIn extends Taken {
  readonly manifest: Manifest;
  /** The words of a device that is known from now on; null: it was known, or is this one. */
  readonly newlyKnown: string | null;
  /** Where the lines that were set aside lie; null: there were none. */
  readonly asideFile: string | null;
}

/**
 * Takes a carry file into the log of a folder, which is begun where there is none. Nothing is taken of a file that is of another campaign
 * or of a device whose words nobody has given.   @param words the signer's, as they were heard from it; needed once
 */
export async function carryIn(folder: string, path: string, words?: string): Promise<Outcome<CarriedIn>> {
  const name = basename(path);
  const file = await readFileOf(path);
  if (!file.ok) return file;
  const { manifest } = file.value;
  const ours = await campaignOfFolder(folder);
  if (!ours.ok) return ours;
  if (ours.value !== null && ours.value !== manifest.campaign)
    return refused(ofAnother(manifest.campaign, ours.value, name));
  const known = knownDevices(folder);
  if (!known.ok) return known;
  const trusted = trust(folder, manifest.key, known.value, words, name);
  if (!trusted.ok) return trusted;
  const taken = await into(folder, file.value, name);
  if (!taken.ok) return taken;
  const { aside, problems } = taken.value;
  const asideFile =
    aside.length === 0 ? null : join(folder, "carry", `aside-${file.value.sum.slice(0, 12)}.jsonl`);
  const notKept = [
    ...(asideFile === null ? [] : await writeAside(folder, asideFile, aside)),
    ...(trusted.value === "this device" ? [] : remember(folder, manifest, known.value)),
  ];
  const newlyKnown = trusted.value === "from now on" ? wordsOf(manifest.key) : null;
  const said = [...file.value.problems, ...problems, ...notKept];
  return { ok: true, value: { ...taken.value, manifest, newlyKnown, asideFile, problems: said } };
}

async function readFileOf(path: string): Promise<Outcome<CarryFile>> {
  try {
    return readCarry(await readFile(path), basename(path));
  } catch (error) {
    return refused(unread(path, error instanceof Error ? error.message : String(error)));
  }
}

/** The campaign a folder is of: by its log, else by its sheets; null: it says none yet. */
export async function campaignOfFolder(folder: string): Promise<Outcome<string | null>> {
  const { campaign } = await readCampaignFolder(folder);
  const bySheets = campaign && codeOf(campaign);
  if (!mayHaveLog(folder)) return { ok: true, value: bySheets };
  const opened = await openKeep(folder, "read");
  if (!opened.ok) return opened;
  try {
    return { ok: true, value: (await campaignHere(opened.value, campaign)) ?? bySheets };
  } catch (error) {
    if (error instanceof KeepFault) return refused(error.problem);
    throw error;
  } finally {
    await opened.value.close();
  }
}

function trust(
  folder: string,
  key: string,
  known: readonly KnownDevice[],
  words: string | undefined,
  file: string,
): Outcome<"this device" | "known" | "from now on"> {
  if (hasKey(folder, key)) return { ok: true, value: "this device" };
  if (known.some((each) => each.key === key)) return { ok: true, value: "known" };
  if (words === undefined) return refused(unknownDevice(file));
  return asWords(words) === wordsOf(key)
    ? { ok: true, value: "from now on" }
    : refused(wordsDiffer(file, words));
}

async function into(folder: string, file: CarryFile, name: string): Promise<Outcome<Taken>> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    return refused(diskFailure(folder, error));
  }
  const opened = await openKeep(folder);
  if (!opened.ok) return opened;
  const keep = opened.value;
  const taken: Outcome<Taken> = keep.shut
    ? refused(keep.shut)
    : { ok: true, value: await takeBlocks(file, keep, name) };
  await keep.close();
  return taken;
}

/** @returns what went wrong */
async function writeAside(folder: string, path: string, aside: readonly Aside[]): Promise<Problem[]> {
  try {
    carryFolder(folder);
    await writeFile(path, aside.map(({ line }) => `${line}\n`).join(""), { flush: true });
    return [];
  } catch (error) {
    return [diskFailure(path, error)];
  }
}

const unread = (got: string, expected: string): Problem => ({
  code: "carry-unread",
  severity: "stop",
  got,
  expected,
  remedy: "Nothing was taken. Look whether the stick is in and the name is right.",
});

const ofAnother = (got: string, expected: string, file: string): Problem => ({
  code: "carry-of-another",
  severity: "stop",
  file,
  got,
  expected,
  remedy: "Nothing was taken. Name the folder of that campaign, or an empty one.",
});

/** The words are not said here: they prove something only when they come from the device itself. */
const unknownDevice = (file: string): Problem => ({
  code: "carry-unknown-device",
  severity: "stop",
  file,
  remedy:
    "Nothing was taken. Ask the people there for the words of their device (npx leafward carry words <folder> shows them), and give them here: --trust <words>.",
});

const wordsDiffer = (file: string, got: string): Problem => ({
  code: "carry-words-differ",
  severity: "stop",
  file,
  got,
  remedy:
    "Nothing was taken. Have the words read out again. If they are right, this file is not from that device: do not use it.",
});
