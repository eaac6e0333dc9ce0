import { walls } from "../../../core/say/rooms/walls.ts";
import type { WallsView } from "./views.ts";
import { useWriter } from "./writer.tsx";
import "./writer-choice.css";

/** Who works on this device: a device that several share asks; one person's own only says. */
export function WriterChoice({ people }: { readonly people: WallsView["people"] }) {
  const { person, isFixed, choose } = useWriter();
  const found = people.find(({ code }) => code === person);
  if (isFixed) return <p className="writer-choice">{found?.name ?? person}</p>;
  return (
    <label className="writer-choice">
      <span className="quiet">{walls.writer}</span>
      <select value={found?.code ?? ""} onChange={({ target }) => choose(target.value || null)}>
        <option value="">{walls.nobody}</option>
        {people.map(({ code, name }) => (
          <option key={code} value={code}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
