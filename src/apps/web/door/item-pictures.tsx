import { useState } from "react";
import { sayDay } from "../../../core/say/dates.ts";
import { door, sayWord } from "../../../core/say/rooms/door.ts";
import { picture as pictureWords } from "../../../core/say/rooms/picture.ts";
import type { Day } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";
import { Section } from "../frame/section.tsx";
import { KeptPicture } from "../item/kept-picture.tsx";
import { PictureButton } from "../item/picture-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useStatus } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import "./item-pictures.css";
import type { DoorItem } from "./item-view.ts";

const SHOTS = Object.entries<string>(door.shots);

/** Pictures of the item as it is at the Door. */
export function ItemPictures({ item }: { readonly item: DoorItem }) {
  const { id, pictures } = item;
  const [shot, setShot] = useState("as_found");
  const status = useStatus();
  const write = useWrite();
  const whyNot = useWhyNot("pictureTaken");
  const said = (name: string): string => Object.fromEntries(SHOTS)[name] ?? sayWord(name);
  const keep = (picture: string): void => {
    if (status === null) return;
    const payload = { item: id, part: "", day: status.today, shot, picture };
    void write(door.saidPicture(said(shot)), { kind: "pictureTaken", payload });
  };
  return (
    <Section id="pictures" heading={door.pictures}>
      {pictures.length === 0 && <p className="quiet">{door.noPictures}</p>}
      <ul className="item-pictures">
        {pictures.map((each) => {
          const words = door.shotOf(said(each.shot), each.part, sayDay(each.day as Day, LOCALE));
          return (
            <li key={`${each.picture} ${each.shot}`}>
              <KeptPicture picture={each.picture} says={words} />
              <p className="quiet">{words}</p>
            </li>
          );
        })}
      </ul>
      <div className="item-pictures-take">
        <label>
          {door.shot}
          <select value={shot} onChange={({ target }) => setShot(target.value)}>
            {SHOTS.map(([name, words]) => (
              <option key={name} value={name}>
                {words}
              </option>
            ))}
          </select>
        </label>
        {whyNot === null ? (
          <PictureButton words={pictureWords.take} taken={keep} />
        ) : (
          <p className="quiet">{whyNot}</p>
        )}
      </div>
    </Section>
  );
}
