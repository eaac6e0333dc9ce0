import { useState } from "react";
import { door, sayWord } from "../../../core/say/rooms/door.ts";
import { count } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import { AskAdviser } from "../item/ask-adviser.tsx";
import { ItemWhy } from "../item/item-why.tsx";
import { goTo, linkTo } from "../walls/where.ts";
import { useWriter } from "../walls/writer.tsx";
import { AnswersGiven } from "./answers-given.tsx";
import { Dangers } from "./dangers.tsx";
import { Disagreements } from "./disagreements.tsx";
import { FinishSurvey } from "./finish-survey.tsx";
import { FollowsShown } from "./follows-shown.tsx";
import { ItemPictures } from "./item-pictures.tsx";
import "./item-screen.css";
import type { DoorItem } from "./item-view.ts";
import { ScreenHeading } from "./screen-heading.tsx";
import { StopScreen } from "./stop-screen.tsx";
import { Survey } from "./survey.tsx";
import { useKeptView } from "./use-kept-view.ts";
import { useTags } from "./use-tags.ts";

const NONE: readonly string[] = [];

/** One item at the Door: its survey, and what follows from it. */
export function ItemScreen({ id }: { readonly id: string }) {
  const [skipped, setSkipped] = useState(NONE);
  const { person } = useWriter();
  const view = useKeptView("doorItem", id, skipped, person);
  if (view === null) return null;
  const { item } = view;
  if (item === null) return <UnknownItem id={id} />;
  if (item.stops.length > 0) return <StopScreen item={item} />;
  return (
    <>
      <ItemHead item={item} />
      <Dangers item={item} />
      <Disagreements item={item} />
      <div className="item-screen">
        <Survey item={item} skipped={skipped} skip={setSkipped} />
        <FollowsShown follows={item.follows} />
      </div>
      <FinishSurvey item={item} />
      <AnswersGiven item={item} />
      <ItemPictures item={item} />
      <ItemTag id={id} />
      <div>
        <AskAdviser item={id} />
        <ItemWhy item={id} />
      </div>
    </>
  );
}

function ItemTag({ id }: { readonly id: string }) {
  const { tags, add } = useTags();
  if (tags.includes(id))
    return (
      <p role="status">
        <a href={linkTo("door", "tags")}>{door.tagWaits}</a>
      </p>
    );
  return (
    <p>
      <button type="button" onClick={() => add(id)}>
        {door.toTag}
      </button>
    </p>
  );
}

function ItemHead({ item }: { readonly item: DoorItem }) {
  const facts = [
    sayWord(item.format),
    item.leaves === null ? "" : door.leaves(count(item.leaves)),
    item.sizes === null ? "" : door.sizes(...sizesSaid(item.sizes)),
    item.foundIn === "" ? "" : door.foundIn(item.foundIn),
    item.isMust ? door.must : "",
  ];
  return (
    <div className="item-head">
      <a href={linkTo("door")}>{door.back}</a>
      <ScreenHeading>{item.id}</ScreenHeading>
      <p className="item-head-title">{item.title}</p>
      <p className="quiet">{facts.filter((each) => each !== "").join(" · ")}</p>
      {item.custodianRule !== "" && <p>{door.rule(item.custodianRule)}</p>}
      <a href={linkTo("door", "list", item.id)}>{door.change}</a>
    </div>
  );
}

const sizesSaid = ([h, w, t]: readonly [number, number, number]): [string, string, string] => [
  count(h).text,
  count(w).text,
  count(t).text,
];

const UnknownItem = ({ id }: { readonly id: string }) => (
  <>
    <ScreenHeading>{id}</ScreenHeading>
    <Section id="door-unknown" heading={door.unknown(id)}>
      <Empty title={door.unknown(id)} help={door.unknownHelp} />
      <div className="item-screen-acts">
        <button type="button" onClick={() => goTo("door", "list", id)}>
          {door.newItem}
        </button>
        <button type="button" onClick={() => goTo("door")}>
          {door.back}
        </button>
      </div>
    </Section>
  </>
);
