import type { Count } from "../page.ts";

const of = (count: Count, one: string, many: string): string => `${count.text} ${count.n === 1 ? one : many}`;

/** A note that begins so tells of frames. */
export const FRAMES_NOTED = "Frames ";

/** Words of the Camera: covers first, then what is clean. */
export const camera = {
  intro: "Covers that must be pictured first, then what is clean.",
  covers: "Covers first",
  coversHelp: "Pictured before they are wrapped. The station is wiped down after each.",
  shots: "Shot list",
  shotsHelp: "Counted on this device until the item is done; nothing is lost when it is reloaded.",
  sets: {
    covers: "Covers and edges: front, back, spine, head, tail, fore-edge",
    openings: "Openings, boards among them",
    sheets: "Sheets",
    "front-back": "Front and back",
    frames: "Frames",
    plate: "Plate",
    "leaf-sides": "Leaves, both sides",
    part: "Part",
  } as Readonly<Record<string, string>>,
  part: (name: string) => `Part on its own: ${name}`,
  count: (have: string, wanted: string | null) => (wanted === null ? have : `${have} of ${wanted}`),
  whole: "all there",
  one: "One more",
  ten: "Ten more",
  back: "One back",
  all: "All of them",
  setShort: (set: string) => (set.split(":")[0] ?? set).toLowerCase(),
  frames: "Frames",
  framesHelp: "The numbers the camera gave, of the first and the last picture.",
  first: "First frame",
  last: "Last frame",
  note: "Note the frames",
  frameNote: (set: string, first: string, last: string, count: number) =>
    `${FRAMES_NOTED}${first} to ${last} (${count}): ${set}`,
  framesSaid: (item: string) => `Frames noted with ${item}`,
  framesBad: "First and last are whole numbers, and the last is not the smaller.",
  framesOther: (count: string, wanted: string) =>
    `These are ${count} frames; the list asks for ${wanted}. Look again before the item leaves.`,
  noted: "Noted",
  files: "Link the camera’s files",
  filesHelp:
    "Choose the files where this device can reach them. Only their checksums (SHA-256) are kept; the files stay where they are.",
  filesBusy: (done: string, all: string) => `Reading ${done} of ${all} …`,
  filesSaid: (files: Count, item: string) => `${of(files, "file", "files")} linked with ${item}`,
  filesFailed: (name: string) => `${name} could not be read. Nothing was linked; choose the files again.`,
  linked: (files: Count) => `${of(files, "file", "files")} linked`,
  notYet: (have: string, wanted: string) => `${have} of ${wanted} pictures are counted. Finish all the same?`,
  notReleased: "It may not come to the camera yet: it is released from the Ward by readings first.",
  notClean: "It may not come to the camera yet: it is cleaned first.",
} as const;
