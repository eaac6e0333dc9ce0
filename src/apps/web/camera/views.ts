import { type ShotSet, shotListOf } from "../../../core/care/shot-list.ts";
import { isOf, standingOf } from "../../../core/log/standing.ts";
import type { SheetRow } from "../../../core/plan/plan.ts";
import { FRAMES_NOTED } from "../../../core/say/rooms/camera.ts";
import { type DayLine, dayLines } from "../at-work/day-lines.ts";
import { type ReadyItems, readyItems } from "../at-work/ready-items.ts";
import { type WorkCard, workCard } from "../at-work/work-card.ts";
import type { Now } from "../log/now.ts";

/** The camera's day, and what is ready for it. */
export interface CameraView {
  readonly hasPlan: boolean;
  /** Of the one who works here; of everyone at the camera where nobody is chosen. Null: nothing is planned today. */
  readonly lines: readonly DayLine[] | null;
  /** Covers that must be pictured before anything else is done to the item. */
  readonly covers: ReadyItems;
  readonly ready: ReadyItems;
}

const isHere = ({ act }: SheetRow): boolean => act === "covers" || act === "image";

const cameraView = (now: Now, person: string | null): CameraView => ({
  hasPlan: now.work !== null,
  lines: dayLines(now, person === null ? isHere : (row) => row.person === person),
  covers: readyItems(now, ["covers"]),
  ready: readyItems(now, ["image"]),
});

/** A set of the shot list, and how many files are linked with it. */
export interface ShotsShown extends ShotSet {
  readonly key: string;
  readonly linked: number;
}

export interface CameraItem extends WorkCard {
  readonly shots: readonly ShotsShown[];
  /** Ranges of frames as they were noted. */
  readonly noted: readonly string[];
}

const cameraItem = (now: Now, id: string): CameraItem | null => {
  const card = workCard(now, id, "camera", ["covers", "image"]);
  const found = now.item(id);
  if (card === null || found === null) return null;
  const { counted } = standingOf(found.events);
  const act = card.step?.act ?? (found.care.done.has("image") ? "image" : "covers");
  const shots = shotListOf(found.item, act, found.route.images).map((shot): ShotsShown => {
    const key = shotKey(shot);
    const linked = card.pictures.filter(
      (each) => each.shot.startsWith(`${shot.set}-`) && each.part === shot.part,
    );
    return { ...shot, key, linked: linked.length };
  });
  const noted = counted.flatMap((event) =>
    isOf(event, "noteWritten") && event.payload.text.startsWith(FRAMES_NOTED) ? [event.payload.text] : [],
  );
  return { ...card, shots: card.step === null ? [] : shots, noted };
};

const shotKey = ({ set, part }: ShotSet): string => (part === "" ? set : `${set} ${part}`);

export const cameraViews = { camera: cameraView, cameraItem } as const;
