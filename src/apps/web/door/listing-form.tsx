import { useState } from "react";
import { listing } from "../../../core/say/rooms/door.ts";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useWrite } from "../link/use-write.ts";
import { useDraft } from "../walls/use-draft.ts";
import { goTo } from "../walls/where.ts";
import { ChoiceTiles, Chosen, Several, Typed } from "./fields.tsx";
import { lastListed, rememberListed } from "./last-listed.ts";
import { draftOf, EMPTY_LISTING, type ListingDraft, listedPayload } from "./listed-payload.ts";
import "./listing-form.css";
import type { ListingView } from "./listing-view.ts";
import { useTags } from "./use-tags.ts";

/** What an item is, as it is listed; its tag is then put on the list to print. */
export function ListingForm({ id, words }: { readonly id: string; readonly words: ListingView }) {
  const { listed } = words;
  const [draft, setDraft, forget] = useDraft<ListingDraft>(
    `listing ${id}`,
    listed === null ? EMPTY_LISTING : draftOf(listed),
  );
  const [like] = useState(lastListed);
  const tags = useTags();
  const write = useWrite();
  const mayNot = useWhyNot("itemListed");
  const put = (change: Partial<ListingDraft>): void => setDraft({ ...draft, ...change });
  const isReady = draft.title.trim() !== "" && draft.format !== "";
  async function keep(): Promise<void> {
    const payload = listedPayload(id, draft, listed);
    const said = listed === null ? listing.said(id) : listing.saidChanged(id);
    if ((await write(said, { kind: "itemListed", payload })) !== null) return;
    forget();
    rememberListed(id, draft);
    if (listed === null) tags.add(id);
    goTo("door", "item", id);
  }
  return (
    <div className="listing-form">
      {listed === null && like !== null && (
        <button type="button" onClick={() => put({ ...like.draft, title: draft.title })}>
          {listing.like(like.id)}
        </button>
      )}
      <Typed words={listing.title} value={draft.title} put={(title) => put({ title })} isWide most={1000} />
      <ChoiceTiles
        words={listing.format}
        choices={words.formats}
        value={draft.format}
        put={(format) => put({ format, support: words.usual[format] ?? draft.support })}
      />
      <div className="listing-form-row">
        <Chosen
          words={listing.support}
          choices={words.supports}
          value={draft.support}
          put={(support) => put({ support })}
        />
        <Chosen
          words={listing.cover}
          choices={words.covers}
          value={draft.cover}
          put={(cover) => put({ cover })}
        />
        {isPhotograph(draft.format) && (
          <Chosen
            words={listing.process}
            choices={words.processes}
            value={draft.process}
            put={(process) => put({ process })}
          />
        )}
      </div>
      <Several
        words={listing.media}
        choices={words.media}
        values={draft.media}
        put={(media) => put({ media })}
      />
      <Several words={listing.has} choices={words.has} values={draft.has} put={(has) => put({ has })} />
      <div className="listing-form-row">
        {SIZES.map(([name, said]) => (
          <Typed key={name} words={said} value={draft[name]} put={(text) => put({ [name]: text })} isNumber />
        ))}
      </div>
      <div className="listing-form-row">
        <Typed words={listing.foundIn} value={draft.foundIn} put={(foundIn) => put({ foundIn })} most={500} />
        <Typed
          words={listing.custodianRule}
          value={draft.custodianRule}
          put={(custodianRule) => put({ custodianRule })}
          most={2000}
        />
      </div>
      <label className="listing-form-must">
        <input
          type="checkbox"
          checked={draft.isMust}
          onChange={({ target }) => put({ isMust: target.checked })}
        />
        {listing.must}
      </label>
      <DoButton isMain whyNot={mayNot ?? (isReady ? null : listing.needs)} act={() => void keep()}>
        {listed === null ? listing.write : listing.rewrite}
      </DoButton>
    </div>
  );
}

const SIZES = [
  ["leaves", listing.leaves],
  ["heightMm", listing.height],
  ["widthMm", listing.width],
  ["thicknessMm", listing.thickness],
  ["massKg", listing.mass],
  ["from", listing.from],
  ["to", listing.to],
] as const;

const isPhotograph = (format: string): boolean => /^(?:photo_|glass_|film_|album)/.test(format);
