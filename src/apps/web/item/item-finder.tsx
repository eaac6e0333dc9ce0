import { type FormEvent, useId, useState } from "react";
import { walls } from "../../../core/say/rooms/walls.ts";
import { askView } from "../link/tablet-link.ts";
import { useView } from "../link/use-view.ts";
import "./item-finder.css";
import { ScanButton } from "./scan-button.tsx";

/** Opens an item by its number, typed or read from its tag.   @param p.unknown is given a number nobody has listed; left out: it is said */
export function ItemFinder(p: {
  readonly found: (item: string) => void;
  readonly unknown?: (number: string) => void;
}) {
  const [text, setText] = useState("");
  const [missed, setMissed] = useState("");
  const near = useView("itemsNear", text.trim());
  const list = useId();
  async function open(number: string): Promise<void> {
    const wanted = number.trim();
    if (wanted === "") return;
    const there = await askView("itemsNear", [wanted]);
    const match = there?.find(({ id }) => id.toLowerCase() === wanted.toLowerCase());
    setMissed("");
    if (match) {
      setText("");
      p.found(match.id);
    } else if (p.unknown && there !== null) {
      setText("");
      p.unknown(wanted);
    } else setMissed(wanted);
  }
  return (
    <form
      className="item-finder"
      onSubmit={(event: FormEvent) => {
        event.preventDefault();
        void open(text);
      }}
    >
      <label>
        {walls.find}
        <input
          value={text}
          list={list}
          onChange={({ target }) => setText(target.value)}
          placeholder={walls.findHelp}
          autoComplete="off"
          spellCheck={false}
          maxLength={80}
        />
      </label>
      <datalist id={list}>
        {near?.map(({ id, title }) => (
          <option key={id} value={id}>
            {title}
          </option>
        ))}
      </datalist>
      <button type="submit">{walls.go}</button>
      <ScanButton
        scanned={(number) => {
          setText(number);
          void open(number);
        }}
      />
      <p role="alert" className="item-finder-missed">
        {missed !== "" && walls.noSuchItem(missed)}
      </p>
    </form>
  );
}
