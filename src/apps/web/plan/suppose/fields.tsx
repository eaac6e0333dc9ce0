import { useId } from "react";
import "./fields.css";

/** A field with its name over it. */
export function Typed(p: {
  readonly type: "date" | "number" | "text";
  readonly label: string;
  readonly help?: string | undefined;
  readonly value: string;
  readonly change: (next: string) => void;
}) {
  const help = useId();
  return (
    <label className="suppose-field" data-wide={p.type === "text"}>
      {p.label}
      <input
        type={p.type}
        value={p.value}
        onChange={({ target }) => p.change(target.value)}
        {...(p.help === undefined ? {} : { "aria-describedby": help })}
      />
      {p.help !== undefined && (
        <span id={help} className="quiet">
          {p.help}
        </span>
      )}
    </label>
  );
}

export const Choice = (p: {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, label: string])[];
  readonly change: (next: string) => void;
}) => (
  <label className="suppose-field">
    {p.label}
    <select value={p.value} onChange={({ target }) => p.change(target.value)}>
      {p.options.map(([value, label]) => (
        <option key={value} value={value}>
          {label}
        </option>
      ))}
    </select>
  </label>
);
