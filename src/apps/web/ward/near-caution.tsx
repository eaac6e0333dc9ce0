import { sayMinutes } from "../../../core/say/dates.ts";
import { near as words } from "../../../core/say/rooms/ward.ts";
import { LOCALE } from "../frame/reader.ts";
import { Signs } from "../item/sign.tsx";
import { useView } from "../link/use-view.ts";
import { useWriter } from "../walls/writer.tsx";
import type { NearView } from "./bag-view.ts";
import "./near-caution.css";

/** Respirator, gloves, eyes, coverall, and what they are against: signs by ISO 7010. */
const SIGNS = ["W009", "M017", "M009", "M004", "M010"];

/** What a person must know before a bag that may be mouldy is opened. */
export function NearCaution({ near }: { readonly near: NearView }) {
  const people = useView("wardPeople");
  const { person } = useWriter();
  if (!near.isExposed) return null;
  const own = people?.find(({ code }) => code === person);
  return (
    <div className="near-caution" role="note" aria-label={words.title}>
      <Signs codes={SIGNS} />
      <div>
        <p>
          <strong>{words.title}.</strong> {words.text}
        </p>
        {near.protection.length > 0 && <p>{near.protection.join(" · ")}</p>}
        {own && own.stop === null && <p>{words.left(sayMinutes(own.leftToday, LOCALE))}</p>}
        <p>{words.local}</p>
      </div>
    </div>
  );
}

/** Why whoever works here may not do work near mould now; null: they may, or it is none. */
export function useNearStop(near: NearView | undefined): string | null {
  const people = useView("wardPeople");
  const { person } = useWriter();
  const own = people?.find(({ code }) => code === person);
  if (!near?.isExposed || !own || own.stop === null) return null;
  return words.stop[own.stop](own.name);
}
