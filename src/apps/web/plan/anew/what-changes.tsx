import type { Act } from "../../../../core/items/campaign.ts";
import { sayDay } from "../../../../core/say/dates.ts";
import { sheets } from "../../../../core/say/page.ts";
import { anew as words } from "../../../../core/say/rooms/plan.ts";
import type { ChangeTold, ReplanTold } from "../../../server/replan-told.ts";
import { count, LOCALE } from "../../frame/reader.ts";

/** What stands as it was told, what moves and why; the changes one by one where somebody wants them. */
export function WhatChanges({ told }: { readonly told: ReplanTold }) {
  const lines: readonly (readonly [string, readonly string[]])[] = [
    [words.kept, [told.kept]],
    [words.moved, told.moved],
    [words.near, told.near],
    [words.due, [told.due]],
    [words.arrived, told.arrived === "" ? [] : [told.arrived]],
    [words.paces, [told.paces]],
    [words.afresh, [told.afresh]],
  ];
  return (
    <>
      <dl className="anew-told">
        {lines.map(
          ([label, sentences]) =>
            sentences.length > 0 && (
              <div key={label} className="anew-told-line">
                <dt>{label}</dt>
                <dd>
                  {sentences.map((sentence) => (
                    <p key={sentence}>{sentence}</p>
                  ))}
                </dd>
              </div>
            ),
        )}
      </dl>
      {told.changes.length > 0 && <OneByOne told={told} />}
    </>
  );
}

const OneByOne = ({ told }: { readonly told: ReplanTold }) => {
  const title = words.changes(count(told.changes.length), count(told.allChanges).text);
  return (
    <details>
      <summary>{title}</summary>
      <p className="quiet">{words.changesHelp}</p>
      <div className="wide" tabIndex={0} role="group" aria-label={title}>
        <table>
          <thead>
            <tr>
              <th scope="col">{words.what}</th>
              <th scope="col">{words.was}</th>
              <th scope="col">{words.is}</th>
              <th scope="col">{words.why}</th>
            </tr>
          </thead>
          <tbody>
            {told.changes.map((each) => (
              <tr key={`${each.what} ${each.act} ${each.day}`}>
                <th scope="row">
                  {each.what} <span className="quiet">{each.act && sheets.acts[each.act as Act]}</span>
                </th>
                <td>{toldWords(each.from, each.day)}</td>
                <td>{nowWords(each)}</td>
                <td>{each.why}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
};

const toldWords = (who: string, day: ChangeTold["day"]): string => `${who}, ${sayDay(day, LOCALE, "short")}`;

const nowWords = ({ to, toDay }: ChangeTold): string =>
  to === null || toDay === null ? words.no : toldWords(to, toDay);
