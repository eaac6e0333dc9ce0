import { atWork } from "../../../core/say/rooms/at-work.ts";
import { bench as words } from "../../../core/say/rooms/bench.ts";
import { ItemWork } from "../at-work/item-work.tsx";
import { ActPictures } from "../at-work/pictures.tsx";
import { Empty } from "../frame/section.tsx";
import { useView } from "../link/use-view.ts";
import { linkTo } from "../walls/where.ts";
import { useWriter } from "../walls/writer.tsx";
import { Wrapper } from "./wrapper.tsx";

/** One item on the bench. */
export function BenchItem({ id }: { readonly id: string }) {
  const { person } = useWriter();
  const card = useView("benchItem", id);
  const at = useView("atWork", person);
  const isListed = useView("isListed", id);
  if (isListed === false)
    return (
      <>
        <h1>{id}</h1>
        <Empty title={words.unknown(id)} help={words.unknownHelp} />
        <a href={linkTo("bench")}>{atWork.back}</a>
      </>
    );
  if (card === null) return <h1>{id}</h1>;
  return (
    <ItemWork card={card} at={at} room="bench">
      {card.step && <ActPictures card={card} act={card.step.act} />}
      {card.step?.act === "wrap" && <Wrapper id={id} />}
    </ItemWork>
  );
}
