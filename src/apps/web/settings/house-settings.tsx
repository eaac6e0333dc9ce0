import { type FormEvent, useState } from "react";
import { sayNumber } from "../../../core/say/dates.ts";
import { settings } from "../../../core/say/rooms/settings.ts";
import { dayFrom } from "../../../core/units/day.ts";
import { count, LOCALE } from "../frame/reader.ts";
import { Section } from "../frame/section.tsx";
import { DoButton } from "../item/do-button.tsx";
import { useWrite } from "../link/use-write.ts";
import type { SettingsView } from "./views.ts";

/** The campaign's days and Ward, its place and its stations. */
export function HouseSettings({ view }: { readonly view: SettingsView }) {
  const [isOpen, setOpen] = useState(false);
  const { place, stations } = view;
  return (
    <Section id="house" heading={settings.house}>
      {isOpen ? (
        <HouseForm view={view} close={() => setOpen(false)} />
      ) : (
        <>
          <dl className="settings-facts">
            <Fact words={settings.name} value={view.name} />
            <Fact words={settings.start} value={view.start} />
            <Fact words={settings.end} value={view.end} />
            <Fact words={settings.wardLitres} value={sayNumber(view.wardLitres, LOCALE)} />
            <Fact
              words={settings.place}
              value={settings.placeSays(
                place.name,
                settings.climate[place.climate] ?? place.climate,
                place.freezer,
                place.fineFilterVacuum,
              )}
            />
          </dl>
          <DoButton whyNot={view.mayChangeSettings ? null : settings.onlyLead} act={() => setOpen(true)}>
            {settings.change} <span className="unseen">{settings.house}</span>
          </DoButton>
        </>
      )}
      <h3>{settings.stations}</h3>
      <ul>
        {stations.map(({ id, kind, places, minutesADay }) => (
          <li key={id}>
            {settings.station(id, kind, count(places), sayNumber(minutesADay / 60, LOCALE, 1))}
          </li>
        ))}
      </ul>
    </Section>
  );
}

const Fact = (p: { readonly words: string; readonly value: string }) => (
  <div>
    <dt>{p.words}</dt>
    <dd>{p.value}</dd>
  </div>
);

function HouseForm({ view, close }: { readonly view: SettingsView; readonly close: () => void }) {
  const [name, setName] = useState(view.name);
  const [start, setStart] = useState<string>(view.start);
  const [end, setEnd] = useState<string>(view.end);
  const [litres, setLitres] = useState(String(view.wardLitres));
  const [fault, setFault] = useState("");
  const write = useWrite();
  async function keep(event: FormEvent): Promise<void> {
    event.preventDefault();
    const [first, last, wardLitres] = [dayFrom(start), dayFrom(end), Number(litres)];
    if (first === null || last === null || last < first) return setFault(settings.backward);
    if (!Number.isFinite(wardLitres) || wardLitres < 0) return setFault(settings.notANumber);
    const payload = { name: name.trim(), start: first, end: last, wardLitres };
    if ((await write(settings.datesKept, { kind: "settingsChanged", payload })) === null) close();
  }
  return (
    <form className="settings-form" onSubmit={keep}>
      <label className="settings-wide">
        {settings.name}
        <input value={name} maxLength={200} required onChange={({ target }) => setName(target.value)} />
      </label>
      <label>
        {settings.start}
        <input type="date" value={start} required onChange={({ target }) => setStart(target.value)} />
      </label>
      <label>
        {settings.end}
        <input type="date" value={end} required onChange={({ target }) => setEnd(target.value)} />
      </label>
      <label>
        {settings.wardLitres}
        <input inputMode="decimal" value={litres} onChange={({ target }) => setLitres(target.value)} />
      </label>
      <p role="alert">{fault}</p>
      <button type="submit">{settings.keep}</button>
      <button type="button" onClick={close}>
        {settings.cancel}
      </button>
    </form>
  );
}
