import { useState } from "react";
import { camera as words } from "../../../core/say/rooms/camera.ts";
import { count } from "../frame/reader.ts";
import { Section } from "../frame/section.tsx";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useWrite } from "../link/use-write.ts";
import { useDraft } from "../walls/use-draft.ts";
import "./frame-range.css";
import { shotWords } from "./shot-list.tsx";
import type { Tally } from "./use-tally.ts";
import type { ShotsShown } from "./views.ts";

const EMPTY = { first: "", last: "" };

/** Notes which frames of the camera are which set of the list. */
export function FrameRange(p: {
  readonly item: string;
  readonly shots: readonly ShotsShown[];
  readonly noted: readonly string[];
  readonly tally: Tally;
}) {
  const [typed, setTyped, forget] = useDraft(`frames ${p.item}`, EMPTY);
  const [key, setKey] = useState("");
  const shot = p.shots.find((each) => each.key === key) ?? p.shots[0];
  const write = useWrite();
  const mayNot = useWhyNot("noteWritten");
  const range = rangeOf(typed);
  if (shot === undefined) return null;
  const { set, part, wanted } = shot;
  async function note(): Promise<void> {
    if (range === null || shot === undefined) return;
    const text = words.frameNote(words.setShort(shotWords(shot)), typed.first, typed.last, range);
    const written = await write(words.framesSaid(p.item), {
      kind: "noteWritten",
      payload: { item: p.item, part, text },
    });
    if (written !== null) return;
    p.tally.set(shot.key, range);
    forget();
  }
  return (
    <Section id="frames" heading={words.frames} intro={words.framesHelp}>
      <div className="frame-range">
        <SetChoice shots={p.shots} chosen={shot} choose={setKey} />
        {(["first", "last"] as const).map((which) => (
          <label key={which}>
            {words[which]}
            <input
              inputMode="numeric"
              autoComplete="off"
              value={typed[which]}
              onChange={({ target }) => setTyped({ ...typed, [which]: target.value.trim() })}
            />
          </label>
        ))}
        <DoButton whyNot={mayNot ?? (range === null ? words.framesBad : null)} act={() => void note()}>
          {words.note}
        </DoButton>
      </div>
      {range !== null && wanted !== null && range !== wanted && (
        <p role="status">{words.framesOther(count(range).text, count(wanted).text)}</p>
      )}
      {p.noted.length > 0 && (
        <ul aria-label={words.noted} className="frame-range-noted" data-set={set}>
          {p.noted.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      )}
    </Section>
  );
}

/** Which set of the list something belongs to. */
export function SetChoice(p: {
  readonly shots: readonly ShotsShown[];
  readonly chosen: ShotsShown;
  readonly choose: (key: string) => void;
}) {
  if (p.shots.length < 2) return null;
  return (
    <label>
      {words.shots}
      <select value={p.chosen.key} onChange={({ target }) => p.choose(target.value)}>
        {p.shots.map((shot) => (
          <option key={shot.key} value={shot.key}>
            {shotWords(shot)}
          </option>
        ))}
      </select>
    </label>
  );
}

/** How many frames; null: these are no frames. */
function rangeOf({ first, last }: typeof EMPTY): number | null {
  if (!/^\d{1,9}$/.test(first) || !/^\d{1,9}$/.test(last)) return null;
  const frames = Number(last) - Number(first) + 1;
  return frames > 0 ? frames : null;
}
