import { count } from "../frame/reader.ts";

/** `closed`: nobody at all is in that day. */
export type CellState = "away" | "closed" | "clean" | { readonly minutes: number; readonly limit: number };

/** Height of the frame, which stands for the day's limit, in px; the figure stands below it. */
const FRAME = 52;

export function DayCell({ state }: { state: CellState }) {
  const frame = { x: "6%", y: 1, width: "88%", height: FRAME };
  if (state === "closed") return <line className="people-closed" x1="42%" x2="58%" y1="27" y2="27" />;
  if (state === "away") return <rect className="people-away" {...frame} fill="url(#away)" />;
  if (state === "clean") return <rect className="people-clean" {...frame} />;
  const height = Math.min(1, state.minutes / Math.max(1, state.limit)) * FRAME;
  return (
    <>
      <rect className="people-cell" {...frame} />
      <rect className="people-bar" {...frame} y={1 + FRAME - height} height={height} />
      <text x="50%" y={FRAME + 24}>
        {count(Math.round(state.minutes)).text}
      </text>
    </>
  );
}
