import { useState } from "react";
import {
  deliveryPhrase,
  endPhrase,
  latePhrase,
  personPhrase,
  stationPhrase,
} from "../../../../core/plan/what-if/phrases.ts";
import { days as dayWords, suppose as words } from "../../../../core/say/rooms/plan.ts";
import { dayFrom } from "../../../../core/units/day.ts";
import { DoButton } from "../../item/do-button.tsx";
import { useDraft } from "../../walls/use-draft.ts";
import type { PlanRoomView } from "../views.ts";
import { Choice, Typed } from "./fields.tsx";
import "./suppose-form.css";

type KindOfChange = keyof typeof words.kinds;
const KINDS = Object.keys(words.kinds) as KindOfChange[]; // its own keys

/** What stands in the fields; every kind takes those it needs. */
interface Filled {
  readonly kind: KindOfChange;
  readonly who: string;
  readonly what: string;
  readonly from: string;
  readonly to: string;
  readonly number: string;
  readonly words: string;
}

const EMPTY: Filled = { kind: "person", who: "", what: "", from: "", to: "", number: "", words: "" };

/** Says in fields what dragging says in the days, and anything else in words. */
export function SupposeForm({
  view,
  add,
}: {
  readonly view: PlanRoomView;
  readonly add: (said: string) => void;
}) {
  const [filled, setFilled, forget] = useDraft<Filled>("plan suppose form", EMPTY);
  const [isShort, setIsShort] = useState(false);
  const set = (part: Partial<Filled>): void => setFilled({ ...filled, ...part });
  const said = phraseOf(filled);
  function addIt(): void {
    setIsShort(said === null);
    if (said === null) return;
    add(said);
    forget();
  }
  return (
    <form
      className="suppose-form"
      onSubmit={(event) => {
        event.preventDefault();
        addIt();
      }}
    >
      <Choice
        label={words.add}
        value={filled.kind}
        options={KINDS.map((kind) => [kind, words.kinds[kind]])}
        change={(kind) => setFilled({ ...EMPTY, kind: kind as KindOfChange })} // one of the options
      />
      <FieldsOf filled={filled} set={set} view={view} />
      <DoButton whyNot={null} act={addIt}>
        {words.addThis}
      </DoButton>
      <p role="alert">{isShort && said === null ? words.fill : ""}</p>
    </form>
  );
}

interface FieldsProps {
  readonly filled: Filled;
  readonly set: (part: Partial<Filled>) => void;
  readonly view: PlanRoomView;
}

function FieldsOf({ filled, set, view }: FieldsProps) {
  const days = (
    <>
      <Typed type="date" label={words.from} value={filled.from} change={(from) => set({ from })} />
      <Typed type="date" label={words.to} value={filled.to} change={(to) => set({ to })} />
    </>
  );
  const who = (label: string, options: readonly (readonly [string, string])[]) => (
    <Choice
      label={label}
      value={filled.who}
      options={[["", "–"], ...options]}
      change={(each) => set({ who: each })}
    />
  );
  const what = (options: readonly (readonly [string, string])[]) => (
    <Choice
      label={words.what}
      value={filled.what}
      options={[["", "–"], ...options]}
      change={(each) => set({ what: each })}
    />
  );
  const number = (label: string, help?: string) => (
    <Typed
      type="number"
      label={label}
      help={help}
      value={filled.number}
      change={(each) => set({ number: each })}
    />
  );
  const stores = view.stores.map(({ id, name }) => [id, name] as const);
  switch (filled.kind) {
    case "person":
      return (
        <>
          {who(
            words.who,
            view.people.map(({ code, name }) => [code, name]),
          )}
          {what([
            ["away", dayWords.supposeAway],
            ["on clean work", dayWords.supposeClean],
          ])}
          {days}
        </>
      );
    case "station":
      return (
        <>
          {who(
            words.station,
            view.stations.map(({ id }) => [id, id]),
          )}
          {what([
            ["closed", dayWords.supposeClosed],
            ["open", dayWords.supposeOpen],
          ])}
          {days}
        </>
      );
    case "end":
      return <Typed type="date" label={words.newEnd} value={filled.from} change={(from) => set({ from })} />;
    case "late":
      return (
        <>
          {who(words.store, stores)}
          {number(words.daysLater, words.daysLaterHelp)}
        </>
      );
    case "delivery":
      return (
        <>
          {who(words.store, stores)}
          {number(words.quantity)}
          <Typed type="date" label={words.day} value={filled.from} change={(from) => set({ from })} />
        </>
      );
    case "words":
      return (
        <Typed
          type="text"
          label={words.words}
          help={words.wordsHelp}
          value={filled.words}
          change={(each) => set({ words: each })}
        />
      );
  }
}

/** What the fields say, in the words of a scenario; null: something is missing. */
export function phraseOf({ kind, who, what, number, words: text, ...typed }: Filled): string | null {
  const from = dayFrom(typed.from);
  const to = dayFrom(typed.to) ?? from;
  const count = number.trim() === "" ? Number.NaN : Number(number);
  const span = from !== null && to !== null ? { from, to } : null;
  switch (kind) {
    case "person":
      return who !== "" && span && (what === "away" || what === "on clean work")
        ? personPhrase(who, what, span)
        : null;
    case "station":
      return who !== "" && span && (what === "closed" || what === "open")
        ? stationPhrase(who, what, span)
        : null;
    case "end":
      return from && endPhrase(from);
    case "late":
      return who !== "" && Number.isInteger(count) && count !== 0 ? latePhrase(who, count) : null;
    case "delivery":
      return who !== "" && from && count > 0 ? deliveryPhrase(who, count, from) : null;
    case "words":
      return text.trim() === "" ? null : text.trim();
  }
}
