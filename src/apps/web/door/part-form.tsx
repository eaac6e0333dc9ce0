import { useId, useState } from "react";
import { listing } from "../../../core/say/rooms/door.ts";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useWrite } from "../link/use-write.ts";
import { Chosen, Several, Typed } from "./fields.tsx";
import { said } from "./listed-payload.ts";
import "./listing-form.css";
import type { ListingView } from "./listing-view.ts";

interface PartDraft {
  readonly name: string;
  readonly support: string;
  readonly cover: string;
  readonly media: readonly string[];
  readonly has: readonly string[];
  readonly leaves: string;
}
const EMPTY: PartDraft = { name: "", support: "", cover: "", media: [], has: [], leaves: "" };

/** A part with what it has of its own; what is left empty is as the item has it. */
export function PartForm({ item, words }: { readonly item: string; readonly words: ListingView }) {
  const [draft, setDraft] = useState(EMPTY);
  const write = useWrite();
  const mayNot = useWhyNot("partListed");
  const usual = useId();
  const put = (change: Partial<PartDraft>): void => setDraft({ ...draft, ...change });
  const part = draft.name.trim();
  async function keep(): Promise<void> {
    const leaves = Number(draft.leaves);
    const facts = said({
      support: draft.support || undefined,
      cover: draft.cover || undefined,
      media: draft.media.length > 0 ? draft.media : undefined,
      has: draft.has.length > 0 ? draft.has : undefined,
      leaves: leaves > 0 ? leaves : undefined,
    });
    const problem = await write(listing.saidPart(part), {
      kind: "partListed",
      payload: { item, part, facts },
    });
    if (problem === null) setDraft(EMPTY);
  }
  return (
    <div className="listing-form">
      <div className="listing-form-row">
        <Typed
          words={listing.part}
          value={draft.name}
          put={(name) => put({ name })}
          most={80}
          suggestions={usual}
        />
        <datalist id={usual}>
          {listing.usualParts.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
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
        <Typed words={listing.leaves} value={draft.leaves} put={(leaves) => put({ leaves })} isNumber />
      </div>
      <Several
        words={listing.media}
        choices={words.media}
        values={draft.media}
        put={(media) => put({ media })}
      />
      <Several words={listing.has} choices={words.has} values={draft.has} put={(has) => put({ has })} />
      <DoButton whyNot={mayNot ?? (part === "" ? listing.partNeeds : null)} act={() => void keep()}>
        {listing.addPart}
      </DoButton>
    </div>
  );
}
