import { useId, useState } from "react";
import { picture as pictureWords } from "../../../core/say/rooms/picture.ts";
import { ask } from "../../../core/say/rooms/questions.ts";
import { useStatus, useView } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import { useDraft } from "../walls/use-draft.ts";
import "./ask-adviser.css";
import { DoButton } from "./do-button.tsx";
import { Fold } from "./fold.tsx";
import { KeptPicture } from "./kept-picture.tsx";
import { PictureButton } from "./picture-button.tsx";
import { useWhyNot } from "./use-why-not.ts";

interface Asking {
  readonly text: string;
  /** By SHA-256. */
  readonly pictures: readonly string[];
}
const NOTHING: Asking = { text: "", pictures: [] };

/** Stop and ask: a question to the adviser about an item, with pictures; it waits on this device where there is no network.
 *  @param p.item left out: about the campaign   @param p.isOpen open from the start, on a screen that stops all else */
export function AskAdviser(p: { readonly item?: string; readonly isOpen?: boolean }) {
  const { item } = p;
  const name = useView("nextQuestionName");
  const status = useStatus();
  const write = useWrite();
  const [draft, setDraft, forget] = useDraft<Asking>(`ask ${item ?? ""}`, NOTHING);
  const [isOpen, setOpen] = useState(p.isOpen ?? (draft.text !== "" || draft.pictures.length > 0));
  const mayNot = useWhyNot("questionAsked");
  const noPicture = useWhyNot("pictureTaken") !== null || item === undefined;
  const help = useId();
  async function send(): Promise<void> {
    if (name === null || status === null) return;
    const asked = { question: name, text: draft.text.trim(), ...(item === undefined ? {} : { item }) };
    const pictures = draft.pictures.map((picture) => ({
      kind: "pictureTaken" as const,
      payload: { item: item ?? "", part: "", day: status.today, shot: name, picture },
    }));
    const problem = await write(ask.said(name), { kind: "questionAsked", payload: asked }, ...pictures);
    if (problem !== null) return;
    forget();
    setOpen(p.isOpen ?? false);
  }
  return (
    <Fold
      words={<strong>{item === undefined ? ask.openGeneral : ask.open}</strong>}
      isOpen={isOpen}
      opened={setOpen}
    >
      <div className="ask-adviser">
        <label>
          {ask.text}
          <textarea
            rows={3}
            maxLength={2000}
            value={draft.text}
            aria-describedby={help}
            onChange={({ target }) => setDraft({ ...draft, text: target.value })}
          />
        </label>
        <p className="quiet" id={help}>
          {ask.help}
        </p>
        {draft.pictures.length > 0 && (
          <ul className="ask-adviser-pictures">
            {draft.pictures.map((each, at) => (
              <li key={each}>
                <KeptPicture picture={each} says={ask.pictureN(at + 1)} />
              </li>
            ))}
          </ul>
        )}
        <div className="ask-adviser-acts">
          {!noPicture && (
            <PictureButton
              words={draft.pictures.length === 0 ? ask.picture : pictureWords.take}
              taken={(each) => setDraft({ ...draft, pictures: [...draft.pictures, each] })}
            />
          )}
          <DoButton
            isMain
            whyNot={mayNot ?? (draft.text.trim() === "" ? ask.empty : null)}
            act={() => void send()}
          >
            {ask.send}
          </DoButton>
        </div>
        {item !== undefined && <p className="quiet">{ask.until}</p>}
      </div>
    </Fold>
  );
}
