import { useState } from "react";
import { Input, Label, SearchField } from "react-aria-components";
import type { Left, Plan } from "../../../core/plan/plan.ts";
import { left } from "../../../core/say/page.ts";
import { count } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import { LeftItem } from "./left-item.tsx";
import "./left.css";

const KINDS = ["no time", "set aside", "at the Door"] as const;
/** Shown of each kind at first, and how many more at a press. */
const FIRST = 6;
const STEP = 20;

/** Items without a place, by kind, with why, rule and whom to ask. */
export function LeftItems({ plan }: { plan: Plan }) {
  const [wanted, setWanted] = useState("");
  const found = plan.left.filter((each) => matches(each, wanted));
  return (
    <Section id="left" heading={left.heading} intro={left.intro}>
      {plan.left.length === 0 ? (
        <Empty title={left.empty} help={left.emptyHelp} />
      ) : (
        <>
          <SearchField className="left-search" value={wanted} onChange={setWanted}>
            <Label>{left.search}</Label>
            <Input placeholder={left.searchHelp} />
          </SearchField>
          <p role="status" className="quiet">
            {left.found(count(found.length), count(plan.left.length).text)}
          </p>
          {KINDS.map((kind) => (
            <Kind
              key={kind}
              kind={kind}
              items={found.filter((each) => each.kind === kind)}
              searching={wanted !== ""}
            />
          ))}
        </>
      )}
    </Section>
  );
}

function Kind({
  kind,
  items,
  searching,
}: {
  kind: Left["kind"];
  items: readonly Left[];
  searching: boolean;
}) {
  const [most, setMost] = useState(FIRST);
  return (
    <div className="left-kind">
      <h3>
        {left.kinds[kind]} ({count(items.length).text})
      </h3>
      <p className="quiet">
        {items.length > 0 ? left.kindsHelp[kind] : searching ? left.noMatch : left.kindsNone[kind]}
      </p>
      <ul>
        {items.slice(0, most).map((item) => (
          <LeftItem key={`${item.kind} ${item.item}`} item={item} />
        ))}
      </ul>
      {items.length > most && (
        <button type="button" onClick={() => setMost(most + STEP)}>
          {left.more(count(Math.min(STEP, items.length - most)).text)}{" "}
          <span className="quiet">{left.shown(count(most).text, count(items.length).text)}</span>
        </button>
      )}
    </div>
  );
}

function matches(item: Left, wanted: string): boolean {
  const text = [item.item, item.title, item.why, ...item.reasons.map((reason) => reason.rule)]
    .join(" ")
    .toLowerCase();
  return wanted
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
