import { sayDay } from "../../../core/say/dates.ts";
import { ROOM_NAMES } from "../../../core/say/rooms/walls.ts";
import { WARD_TASKS, ward as wardWords, bag as words } from "../../../core/say/rooms/ward.ts";
import { ScreenTitle } from "../entry/screen-title.tsx";
import { LOCALE } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import { AskAdviser } from "../item/ask-adviser.tsx";
import { ItemWhy } from "../item/item-why.tsx";
import { useView } from "../link/use-view.ts";
import { goTo, linkTo } from "../walls/where.ts";
import { BagActs } from "./bag-acts.tsx";
import { BagCurve } from "./bag-curve.tsx";
import { BagTable } from "./bag-table.tsx";
import type { BagView } from "./bag-view.ts";
import "./bag-screen.css";
import { ReadyWords } from "./ready-words.tsx";
import { sayWhen } from "./when.ts";

/** One bag: what is next, why it may or may not leave, when it may be ready, its readings, what lies in it.   @param p.act the form that is open */
export function BagScreen(p: { readonly bag: string; readonly act: string }) {
  const view = useView("wardBag", p.bag);
  if (view === null)
    return (
      <>
        <Back bag={p.bag} />
        <ScreenTitle>{wardWords.bag(p.bag)}</ScreenTitle>
        <Empty title={wardWords.noBag(p.bag)} help={wardWords.noBagHelp} />
      </>
    );
  const { due } = view;
  return (
    <>
      <div>
        <Back bag={p.bag} />
        <ScreenTitle>{wardWords.bag(p.bag)}</ScreenTitle>
        {view.shelf !== "" && <p className="quiet">{wardWords.shelf(view.shelf)}</p>}
        <p className="bag-screen-due">
          <strong>{WARD_TASKS[due.task][0]}</strong>{" "}
          {!due.isDue && wardWords.from(sayWhen(due.from, view.day))}
        </p>
        <p>{WARD_TASKS[due.task][1]}</p>
      </div>
      <BagActs
        view={view}
        act={p.act}
        choose={(act) => goTo("ward", "bag", p.bag, ...(act === "" ? [] : [act]))}
      />
      <Leaving view={view} />
      <ReadyWords view={view} />
      <Section id="curve" heading={words.curve}>
        {view.entries.length === 0 ? (
          <Empty title={words.noReadings} help={words.noReadingsHelp} />
        ) : (
          <>
            <BagCurve view={view} />
            <BagTable entries={view.entries} />
          </>
        )}
      </Section>
      <Contents view={view} />
      {view.cautions.length > 0 && (
        <details className="bag-screen-more">
          <summary>{words.cautions}</summary>
          <ul>
            {view.cautions.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

const Back = ({ bag }: { readonly bag: string }) => (
  <p>
    <a href={linkTo("ward", "at", bag)} aria-label={`${ROOM_NAMES.ward}: ${wardWords.back}`}>
      {wardWords.back}
    </a>
  </p>
);

/** Why it may leave, or exactly why not: the readings condition by condition, then what else keeps each item. */
const Leaving = ({ view }: { readonly view: BagView }) => {
  const rest = view.items.flatMap(({ id, holds }) => holds.map((hold) => ({ id, hold })));
  const isEarned = view.items.every((each) => each.isEarned);
  return (
    <Section id="leaving" heading={isEarned ? words.why.earned : words.why.held}>
      {view.checks.length > 0 && (
        <ul className="bag-screen-checks">
          {view.checks.map(({ met, asks, seen, missing }) => (
            <li key={asks} data-met={met}>
              <span aria-hidden="true">{met ? "✓" : "✗"}</span>
              <span className="unseen">{met ? words.met : words.unmet}: </span>
              <span>
                {asks} <span className="quiet">{seen}</span> {missing !== "" && <strong>{missing}</strong>}
              </span>
            </li>
          ))}
        </ul>
      )}
      {rest.length > 0 && (
        <ul className="bag-screen-holds">
          {rest.map(({ id, hold }) => (
            <li key={id + hold}>
              {view.items.length > 1 && <strong>{id}: </strong>}
              {hold}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
};

const Contents = ({ view }: { readonly view: BagView }) => (
  <Section id="contents" heading={words.contents}>
    <ul className="bag-screen-items">
      {view.items.map(({ id, title, conditions, since, waits }) => (
        <li key={id}>
          <h3>{id}</h3>
          <p>{title}</p>
          <p className="quiet">{[...conditions, words.since(sayDay(since, LOCALE, "tiny"))].join(" · ")}</p>
          {waits.map((each) => (
            <p key={each}>{each}</p>
          ))}
          <ItemWhy item={id} />
          <AskAdviser item={id} />
        </li>
      ))}
    </ul>
  </Section>
);
