import { bag as bagWords, ward as words } from "../../../core/say/rooms/ward.ts";
import { ScreenTitle } from "../entry/screen-title.tsx";
import { Empty } from "../frame/section.tsx";
import { useView } from "../link/use-view.ts";
import { linkTo } from "../walls/where.ts";
import "./bag-screen.css";
import { ReadForm } from "./read-form.tsx";

/** One reading on a round along the shelves: press, type, write, and back. */
export function QuickRead({ bag, done }: { readonly bag: string; readonly done: () => void }) {
  const view = useView("wardBag", bag);
  return (
    <>
      <ScreenTitle>{words.bag(bag)}</ScreenTitle>
      {view === null ? (
        <Empty title={words.noBag(bag)} help={words.noBagHelp} />
      ) : (
        <ReadForm view={view} done={done} />
      )}
      <p>
        <a className="quick-read-cancel" href={linkTo("ward", "at", bag)}>
          {bagWords.cancel}
        </a>
      </p>
    </>
  );
}
