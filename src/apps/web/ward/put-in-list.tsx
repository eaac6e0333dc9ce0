import { putIn as words } from "../../../core/say/rooms/ward.ts";
import type { PutInView } from "./put-in-view.ts";

/** The items chosen, what each has, and what speaks against it. */
export const PutInList = (p: { readonly view: PutInView; readonly takeOff: (item: string) => void }) => (
  <>
    {p.view.items.length === 0 && <p>{words.nothing}</p>}
    <ul className="put-in-list" aria-live="polite">
      {p.view.items.map(({ id, title, conditions, bag, needsWard }) => (
        <li key={id}>
          <div>
            <p>
              <strong>{id}</strong> {title}
            </p>
            <p className="quiet">{conditions.join(" · ")}</p>
            {bag !== "" && <p>{words.there(id, bag)}</p>}
            {!needsWard && <p>{words.noWard(id)}</p>}
          </div>
          <button type="button" aria-label={words.takeOff(id)} onClick={() => p.takeOff(id)}>
            ✕
          </button>
        </li>
      ))}
    </ul>
    {p.view.isMixed && (
      <p role="alert">
        <strong>{words.mixed}</strong>
      </p>
    )}
  </>
);
