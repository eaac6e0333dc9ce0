import { days as words } from "../../../../core/say/rooms/plan.ts";
import { DAY, FRAME } from "./sizes.ts";

const BOX = `M4 2h${DAY - 8}v${FRAME}h${8 - DAY}z`;
const HALF = `M4 ${2 + FRAME / 2}h${DAY - 8}v${FRAME / 2}h${8 - DAY}z`;
const SIGNS: readonly (readonly [
  words: string,
  paths: readonly (readonly [kind: string, path: string])[],
])[] = [
  [
    words.keyBar,
    [
      ["week-strip-frame", BOX],
      ["week-strip-bar", HALF],
    ],
  ],
  [words.clean, [["week-strip-clean", BOX]]],
  [words.away, [["week-strip-away", BOX]]],
];

/** What the frames mean. */
export const RosterKey = () => (
  <ul className="roster-key" aria-label={words.key}>
    {SIGNS.map(([said, paths]) => (
      <li key={said}>
        <svg width={DAY} height={FRAME + 4} aria-hidden="true">
          {paths.map(([kind, path]) => (
            <path key={kind} className={kind} d={path} />
          ))}
        </svg>
        {said}
      </li>
    ))}
  </ul>
);
