import { useId } from "react";
import { putIn as words } from "../../../core/say/rooms/ward.ts";
import { count } from "../frame/reader.ts";
import type { PutInDraft } from "./put-in-drafts.ts";
import type { PutInView } from "./put-in-view.ts";

/** Which bag, and where it stands. */
export function PutInPlace(p: {
  readonly view: PutInView;
  readonly draft: PutInDraft;
  readonly change: (more: Partial<PutInDraft>) => void;
}) {
  const { view, draft } = p;
  const ids = useId();
  return (
    <div className="put-in-part">
      <div className="put-in-fields">
        <label>
          <span>{words.bag}</span>
          <input
            value={draft.bag}
            list={`${ids}bags`}
            autoComplete="off"
            spellCheck={false}
            maxLength={40}
            onChange={({ target }) => p.change({ bag: target.value })}
          />
          <span className="quiet">{words.bagHelp}</span>
        </label>
        <button type="button" onClick={() => p.change({ bag: view.freeBag })}>
          {words.free(view.freeBag)}
        </button>
        <label>
          <span>{words.shelf}</span>
          <input
            value={draft.shelf}
            placeholder={view.shelf}
            list={`${ids}shelves`}
            autoComplete="off"
            maxLength={40}
            onChange={({ target }) => p.change({ shelf: target.value })}
          />
        </label>
        <label>
          <span>{words.litres}</span>
          <input
            value={draft.litres}
            inputMode="decimal"
            autoComplete="off"
            maxLength={6}
            onChange={({ target }) => p.change({ litres: target.value.replace(/[^\d.,]/g, "") })}
          />
          {view.items.length > 0 && (
            <span className="quiet">
              {words.wants(Math.ceil(view.items.reduce((sum, each) => sum + each.litres, 0)))}
            </span>
          )}
        </label>
      </div>
      {view.inside.length > 0 && (
        <p role="status">
          <strong>{words.anew(count(view.inside.length))}</strong>
        </p>
      )}
      {view.placeHasFreezer && view.items.some(({ hasInsects }) => hasInsects) && (
        <label className="tick">
          <input
            type="checkbox"
            checked={draft.isFrozen}
            onChange={({ target }) => p.change({ isFrozen: target.checked })}
          />
          {words.freezer}
        </label>
      )}
      <datalist id={`${ids}bags`}>
        {view.bags.map((each) => (
          <option key={each} value={each} />
        ))}
      </datalist>
      <datalist id={`${ids}shelves`}>
        {view.shelves.map((each) => (
          <option key={each} value={each} />
        ))}
      </datalist>
    </div>
  );
}
