/** A tick on the line with its words, which lean inward near either end. `at`: per cent of the width from the left. */
export const FinishMark = ({ at, side, words }: { at: number; side: "above" | "below"; words: string }) => (
  <g data-lean={at < 12 ? "right" : at > 88 ? "left" : "middle"}>
    <line className="tick" x1={`${at}%`} x2={`${at}%`} y1="40" y2="62" />
    <text x={`${at}%`} y={side === "above" ? 26 : 88}>
      {words}
    </text>
  </g>
);
