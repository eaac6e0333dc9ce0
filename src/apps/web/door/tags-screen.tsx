import { door, tags as words } from "../../../core/say/rooms/door.ts";
import { qrSvg } from "../../../edge/papers/qr.ts";
import { Empty } from "../frame/section.tsx";
import { Signs } from "../item/sign.tsx";
import { linkTo } from "../walls/where.ts";
import { ScreenHeading } from "./screen-heading.tsx";
import "./tags-screen.css";
import type { TagView } from "./tags-view.ts";
import { useKeptView } from "./use-kept-view.ts";
import { useTags } from "./use-tags.ts";

/** Tags that wait to be printed; on paper the tags alone. */
export function TagsScreen() {
  const { tags, remove, clear } = useTags();
  const view = useKeptView("doorTags", tags);
  if (view === null) return null;
  return (
    <div className="tags-screen">
      <div className="tags-head">
        <a href={linkTo("door")}>{door.back}</a>
        <ScreenHeading>{words.title}</ScreenHeading>
        <p className="quiet">{words.help}</p>
      </div>
      {view.length === 0 ? (
        <Empty title={words.none} help={words.noneHelp} />
      ) : (
        <div className="tags-acts">
          <button type="button" onClick={() => print()}>
            {words.print}
          </button>
          <button type="button" onClick={clear}>
            {words.clear}
          </button>
        </div>
      )}
      <ul className="tags" aria-label={words.list}>
        {view.map((tag) => (
          <li key={tag.id}>
            <Tag tag={tag} />
            <button type="button" onClick={() => remove(tag.id)}>
              {words.remove(tag.id)}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

const Tag = ({ tag: { id, title, dangers } }: { readonly tag: TagView }) => (
  <div className="tag" data-danger={dangers.length > 0}>
    {/* drawn by qrSvg from dots alone; nothing typed stands in it */}
    <span
      className="tag-code"
      role="img"
      aria-label={words.code(id)}
      dangerouslySetInnerHTML={{ __html: qrSvg(id) }}
    />
    <p className="tag-number">{id}</p>
    <p className="tag-title">{title}</p>
    {dangers.length > 0 && (
      <div className="tag-danger">
        <Signs codes={[...new Set(dangers.flatMap(({ signs }) => signs))]} />
        <p>
          <strong>{words.askFirst}.</strong>{" "}
          {dangers
            .map(({ holds, isDoubtful }) => `${isDoubtful ? door.maybe : door.holds} ${holds}`)
            .join("; ")}
          .
        </p>
      </div>
    )}
  </div>
);
