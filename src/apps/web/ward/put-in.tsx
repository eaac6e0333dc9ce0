import { useState } from "react";
import { putIn as words } from "../../../core/say/rooms/ward.ts";
import { ScreenTitle } from "../entry/screen-title.tsx";
import { useLast } from "../entry/use-last.ts";
import { count } from "../frame/reader.ts";
import { DoButton } from "../item/do-button.tsx";
import { ItemFinder } from "../item/item-finder.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useView } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import { useDraft } from "../walls/use-draft.ts";
import { goTo, linkTo } from "../walls/where.ts";
import { useWriter } from "../walls/writer.tsx";
import { MinutesNear } from "./minutes-near.tsx";
import { NearCaution, useNearStop } from "./near-caution.tsx";
import "./put-in.css";
import { type PutInDraft, putInDrafts } from "./put-in-drafts.ts";
import { PutInList } from "./put-in-list.tsx";
import { PutInPlace } from "./put-in-place.tsx";

const NOTHING: PutInDraft = { items: [], bag: "", shelf: "", litres: "", isFrozen: false };

/** One item or many into one bag, closed in.   @param first an item chosen before */
export function PutIn({ first }: { readonly first: string }) {
  const [draft, setDraft, forget] = useDraft<PutInDraft>("ward put in", NOTHING);
  const items = first === "" || draft.items.includes(first) ? draft.items : [first, ...draft.items];
  const view = useLast(useView("wardPutIn", items, draft.bag.trim()));
  const [minutes, setMinutes] = useState<number | null>(null);
  const write = useWrite();
  const { person } = useWriter();
  const stop = useNearStop(view?.near);
  const mayNot = useWhyNot("itemMoved", "bagClosed", "actDone");
  const bag = draft.bag.trim();
  const whyNot = mayNot ?? stop ?? (items.length === 0 ? words.noItems : bag === "" ? words.noBagName : null);
  const spent = minutes ?? (view?.near.minutes.admit ?? 0) * Math.max(1, items.length);
  async function save(): Promise<void> {
    if (view === null || person === null) return;
    const drafts = putInDrafts(view, { ...draft, bag }, person, spent);
    if ((await write(words.said(count(items.length), bag), ...drafts)) !== null) return;
    forget();
    goTo("ward", "bag", bag, ...(draft.isFrozen ? [] : ["read"]));
  }
  return (
    <>
      <div>
        <p>
          <a href={linkTo("ward")}>{words.back}</a>
        </p>
        <ScreenTitle>{words.title}</ScreenTitle>
      </div>
      <div className="put-in-part">
        <h2>{words.which}</h2>
        <p className="quiet">{words.add}</p>
        <ItemFinder
          found={(item) => items.includes(item) || setDraft({ ...draft, items: [...items, item] })}
        />
        {view && (
          <PutInList
            view={view}
            takeOff={(item) => {
              setDraft({ ...draft, items: items.filter((each) => each !== item) });
              if (item === first) goTo("ward", "put-in");
            }}
          />
        )}
      </div>
      {view && (
        <PutInPlace view={view} draft={draft} change={(more) => setDraft({ ...draft, items, ...more })} />
      )}
      {view && items.length > 0 && (
        <div className="put-in-part">
          <NearCaution near={view.near} />
          {view.near.isExposed && <MinutesNear minutes={spent} change={setMinutes} />}
          <DoButton isMain whyNot={whyNot} act={() => void save()}>
            {words.save}
          </DoButton>
          <p className="quiet">{words.next}</p>
        </div>
      )}
    </>
  );
}
