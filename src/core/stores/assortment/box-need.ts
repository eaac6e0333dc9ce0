/** Inside of a box, mm: length at least width. */
export interface BoxSize {
  readonly length: number;
  readonly width: number;
  readonly depth: number;
}

/** An item that is to have a box of its own; its size is null where nobody has measured it. */
export interface Boxed {
  readonly id: string;
  /** Items of a kind stand for one another where sizes are missing. */
  readonly kind: string;
  readonly size: BoxSize | null;
}

/** What a box costs the team, in minutes of work. */
export interface BoxCosts {
  /** To make a box to measure, beyond folding a ready one. */
  readonly ownMinutes: number;
  /** To pad a litre that an item leaves empty, so that it does not slide. */
  readonly minutesPerLitre: number;
}

/** Sizes are ordered in steps of this, mm. */
export const SIZE_STEP = 10;
const stepUp = (mm: number): number => Math.ceil(mm / SIZE_STEP - 1e-9) * SIZE_STEP;

/** An item lying flat, whichever way round. */
export const lyingFlat = (height: number, width: number, thickness: number): BoxSize => ({
  length: Math.max(height, width),
  width: Math.min(height, width),
  depth: thickness,
});

/** The inside an item needs, in steps. @param clearance room in each direction, mm; 5 to 10 in a store box: common practice, no source */
export const boxFor = ({ length, width, depth }: BoxSize, clearance: number): BoxSize => ({
  length: stepUp(length + clearance),
  width: stepUp(width + clearance),
  depth: stepUp(depth + clearance),
});

export const holds = (box: BoxSize, need: BoxSize): boolean =>
  need.length <= box.length && need.width <= box.width && need.depth <= box.depth;

export const litresOf = ({ length, width, depth }: BoxSize): number => (length * width * depth) / 1e6;

/** Minutes to pad what a box leaves empty. */
export const paddingMinutes = (box: BoxSize, need: BoxSize, { minutesPerLitre }: BoxCosts): number =>
  Math.max(0, litresOf(box) - litresOf(need)) * minutesPerLitre;
