import { type FormEvent, useState } from "react";
import type { Limits } from "../../../core/items/campaign.ts";
import { sayNumber } from "../../../core/say/dates.ts";
import { LIMIT_WORDS, settings } from "../../../core/say/rooms/settings.ts";
import { LOCALE } from "../frame/reader.ts";
import { DoButton } from "../item/do-button.tsx";
import { useWrite } from "../link/use-write.ts";
import { isLooser } from "./looser.ts";

interface LimitProps {
  readonly name: keyof Limits;
  readonly limits: Limits;
  readonly mayChange: boolean;
}

/** One limit: its value, what it means, where it comes from; the lead changes it. */
export function LimitRow({ name, limits, mayChange }: LimitProps) {
  const [isOpen, setOpen] = useState(false);
  const { name: words, unit, means } = LIMIT_WORDS[name];
  const { value, source } = limits[name];
  return (
    <li className="settings-limit">
      <h3>{words}</h3>
      <p>
        <strong>
          {sayNumber(value, LOCALE)} {unit}
        </strong>{" "}
        {means}
      </p>
      <p className="quiet">
        {settings.source}: {source}
      </p>
      {isOpen ? (
        <LimitForm name={name} limits={limits} close={() => setOpen(false)} />
      ) : (
        <DoButton whyNot={mayChange ? null : settings.onlyLead} act={() => setOpen(true)}>
          {settings.change} <span className="unseen">{words}</span>
        </DoButton>
      )}
    </li>
  );
}

/** A looser limit is asked about a second time, and needs a source. */
function LimitForm(p: { readonly name: keyof Limits; readonly limits: Limits; readonly close: () => void }) {
  const { name: words, unit } = LIMIT_WORDS[p.name];
  const before = p.limits[p.name];
  const [value, setValue] = useState(String(before.value));
  const [source, setSource] = useState("");
  const [asks, setAsks] = useState(false);
  const [fault, setFault] = useState("");
  const write = useWrite();
  async function keep(event: FormEvent): Promise<void> {
    event.preventDefault();
    const number = Number(value.replace(",", "."));
    if (value.trim() === "" || !Number.isFinite(number) || number < 0) return setFault(settings.notANumber);
    if (source.trim() === "") return setFault(settings.noSource);
    if (isLooser(p.name, before.value, number) && !asks) {
      setFault("");
      return setAsks(true);
    }
    const limits = { ...p.limits, [p.name]: { value: number, source: source.trim() } };
    const said = settings.changed(words, `${sayNumber(number, LOCALE)} ${unit}`);
    if ((await write(said, { kind: "limitsChanged", payload: { limits } })) === null) p.close();
  }
  return (
    <form className="settings-form" onSubmit={keep}>
      <label>
        {settings.value} ({unit})
        <input inputMode="decimal" value={value} onChange={({ target }) => setValue(target.value)} />
      </label>
      <label className="settings-wide">
        {settings.source}
        <input value={source} maxLength={500} onChange={({ target }) => setSource(target.value)} />
      </label>
      <p role="alert">{asks ? settings.looser(words) : fault}</p>
      <button type="submit">{asks ? settings.looserYes : settings.keep}</button>
      <button type="button" onClick={p.close}>
        {settings.cancel}
      </button>
    </form>
  );
}
