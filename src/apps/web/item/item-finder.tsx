import { type FormEvent, useId, useState } from "react";
import { walls } from "../../../core/say/rooms/walls.ts";
import { useView } from "../link/use-view.ts";
import "./item-finder.css";
import { ScanButton } from "./scan-button.tsx";

/** Opens an item by its number, typed or read from its tag. */
export function ItemFinder({ found }: { readonly found: (item: string) => void }) {
  const [text, setText] = useState("");
  const [missed, setMissed] = useState("");
  const near = useView("itemsNear", text.trim());
  const list = useId();
  function open(number: string): void {
    const wanted = number.trim();
    const match = near?.find(({ id }) => id.toLowerCase() === wanted.toLowerCase());
    if (match) {
      setText("");
      setMissed("");
      found(match.id);
    } else setMissed(wanted);
  }
  return (
    <form
      className="item-finder"
      onSubmit={(event: FormEvent) => {
        event.preventDefault();
        open(text);
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
          found(number);
        }}
      />
      <p role="alert" className="item-finder-missed">
        {missed !== "" && walls.noSuchItem(missed)}
      </p>
    </form>
  );
}
