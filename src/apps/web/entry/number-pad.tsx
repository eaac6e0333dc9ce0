import { entry as words } from "../../../core/say/rooms/entry.ts";

const DIGITS = ["1", "2", "3", "4", "5", "6", "7", "8", "9"] as const;
const MOST = 8;

/** Keys large enough for gloves; a keyboard types into the field itself. */
export function NumberPad(p: {
  readonly value: string;
  readonly isSigned: boolean;
  readonly change: (text: string) => void;
}) {
  const add = (text: string): void => p.change((p.value + text).slice(0, MOST));
  return (
    <div className="number-pad" role="group" aria-label={words.pad}>
      {DIGITS.map((digit) => (
        <button key={digit} type="button" onClick={() => add(digit)}>
          {digit}
        </button>
      ))}
      <button
        type="button"
        aria-label={words.point}
        onClick={() => !/[.,]/.test(p.value) && add(p.value === "" ? "0." : ".")}
      >
        .
      </button>
      <button type="button" onClick={() => add("0")}>
        0
      </button>
      <button type="button" aria-label={words.erase} onClick={() => p.change(p.value.slice(0, -1))}>
        ⌫
      </button>
      {p.isSigned && (
        <button
          type="button"
          aria-label={words.sign}
          onClick={() => p.change(p.value.startsWith("-") ? p.value.slice(1) : `-${p.value}`)}
        >
          ±
        </button>
      )}
    </div>
  );
}
