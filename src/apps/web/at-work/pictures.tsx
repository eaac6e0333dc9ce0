import { atWork as words } from "../../../core/say/rooms/at-work.ts";
import { Section } from "../frame/section.tsx";
import { KeptPicture } from "../item/kept-picture.tsx";
import { PictureButton } from "../item/picture-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useStatus } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import "./pictures.css";
import type { WorkCard } from "./work-card.ts";

/** Pictures of an act, before and after it, taken with this device. */
export function ActPictures({ card, act }: { readonly card: WorkCard; readonly act: string }) {
  const [write, status] = [useWrite(), useStatus()];
  const mayNot = useWhyNot("pictureTaken");
  const own = card.pictures.filter(({ shot }) => shot === `before-${act}` || shot === `after-${act}`);
  const keep = (when: "before" | "after") => (picture: string) => {
    if (status === null) return;
    void write(words.pictureSaid(card.id), {
      kind: "pictureTaken",
      payload: { item: card.id, part: "", day: status.today, shot: `${when}-${act}`, picture },
    });
  };
  return (
    <Section id="act-pictures" heading={words.pictures}>
      {mayNot === null ? (
        <div className="act-pictures-acts">
          <PictureButton words={words.pictureBefore} taken={keep("before")} />
          <PictureButton words={words.pictureAfter} taken={keep("after")} />
        </div>
      ) : (
        <p className="quiet">{mayNot}</p>
      )}
      {own.length === 0 ? (
        <p className="quiet">{words.noPictures}</p>
      ) : (
        <ul className="act-pictures">
          {own.map(({ picture, shot }) => (
            <li key={`${shot} ${picture}`}>
              <KeptPicture picture={picture} says={shotWords(shot)} />
              <span className="quiet">{shotWords(shot)}</span>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

const shotWords = (shot: string): string =>
  shot.startsWith("before") ? words.pictureBefore : words.pictureAfter;
