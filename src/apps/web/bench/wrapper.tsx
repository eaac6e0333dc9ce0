import { useEffect, useState } from "react";
import { HOUSING_CAUTIONS, HOUSING_NAMES } from "../../../core/say/housing.ts";
import { bench as words } from "../../../core/say/rooms/bench.ts";
import type { HousingKind } from "../../../core/stores/housing/housing.ts";
import { useView } from "../link/use-view.ts";
import { useDraft } from "../walls/use-draft.ts";
import "./wrapper.css";

const KINDS: readonly HousingKind[] = ["jacket", "four-flap", "two-strip", "phase-box"];

/** The wrapper for an item, drawn to its measures. */
export function Wrapper({ id }: { readonly id: string }) {
  const [kind, setKind] = useDraft<HousingKind>("wrapper kind", "jacket");
  return (
    <details className="wrapper">
      <summary>{words.drawing}</summary>
      <label className="wrapper-kind">
        {words.drawingKind}
        <select
          value={kind}
          onChange={({ target }) => setKind(KINDS.find((each) => each === target.value) ?? "jacket")}
        >
          {KINDS.map((each) => (
            <option key={each} value={each}>
              {HOUSING_NAMES[each]}
            </option>
          ))}
        </select>
      </label>
      <WrapperDrawn id={id} kind={kind} />
    </details>
  );
}

function WrapperDrawn({ id, kind }: { readonly id: string; readonly kind: HousingKind }) {
  const drawn = useView("wrapperDrawing", id, kind);
  if (drawn === null) return <p>{words.drawingNone}</p>;
  return (
    <>
      {drawn.svg !== null && <Drawing svg={drawn.svg} says={words.drawingOf(HOUSING_NAMES[kind])} />}
      <ul className="wrapper-making">
        {[...drawn.says, ...HOUSING_CAUTIONS].map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
      <p className="quiet">{words.drawingPrint}</p>
    </>
  );
}

/** A drawing as a picture of its own: its letters and lines are the browser's affair. */
function Drawing({ svg, says }: { readonly svg: string; readonly says: string }) {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [svg]);
  return address === null ? null : <img className="wrapper-drawing" src={address} alt={says} />;
}
