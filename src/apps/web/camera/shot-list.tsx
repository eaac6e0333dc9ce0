import { camera as words } from "../../../core/say/rooms/camera.ts";
import { count } from "../frame/reader.ts";
import { Section } from "../frame/section.tsx";
import "./shot-list.css";
import type { Tally } from "./use-tally.ts";
import type { ShotsShown } from "./views.ts";

const TEN = 10;

/** What is to be pictured, set by set, and how far it is. */
export const ShotList = ({
  shots,
  tally,
}: {
  readonly shots: readonly ShotsShown[];
  readonly tally: Tally;
}) => (
  <Section id="shots" heading={words.shots} intro={words.shotsHelp}>
    <ol className="shot-list">
      {shots.map((shot) => (
        <ShotLine key={shot.key} shot={shot} tally={tally} />
      ))}
    </ol>
  </Section>
);

export const shotWords = ({ set, part }: Pick<ShotsShown, "set" | "part">): string =>
  part === "" ? (words.sets[set] ?? set) : words.part(part);

function ShotLine({ shot, tally }: { readonly shot: ShotsShown; readonly tally: Tally }) {
  const { key, wanted, linked } = shot;
  const have = tally.of(shot);
  const says = shotWords(shot);
  const by = (more: number) => () => tally.set(key, have + more);
  return (
    <li>
      <p>
        <strong>{says}</strong>
      </p>
      <p role="status" className="shot-list-count">
        {words.count(count(have).text, wanted === null ? null : count(wanted).text)}
        {wanted !== null && have >= wanted && ` · ${words.whole}`}
        {linked > 0 && <span className="quiet"> · {words.linked(count(linked))}</span>}
      </p>
      <div className="shot-list-acts">
        <button type="button" aria-label={`${words.one}: ${says}`} onClick={by(1)}>
          +1
        </button>
        <button type="button" aria-label={`${words.ten}: ${says}`} onClick={by(TEN)}>
          +{TEN}
        </button>
        <button type="button" aria-label={`${words.back}: ${says}`} onClick={by(-1)}>
          −1
        </button>
        {wanted !== null && (
          <button type="button" aria-label={`${words.all}: ${says}`} onClick={() => tally.set(key, wanted)}>
            {words.all}
          </button>
        )}
      </div>
    </li>
  );
}
