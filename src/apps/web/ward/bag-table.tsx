import { sayNumber, sayPercent } from "../../../core/say/dates.ts";
import { bag as words } from "../../../core/say/rooms/ward.ts";
import { LOCALE } from "../frame/reader.ts";
import { sayGrams } from "./asked-readings.ts";
import type { BagEntry } from "./bag-view.ts";
import { sayWhen } from "./when.ts";

/** Everything written about a bag, the newest first. */
export const BagTable = ({ entries }: { readonly entries: readonly BagEntry[] }) => (
  <details className="bag-screen-more">
    <summary>{words.table}</summary>
    <div className="wide" role="region" aria-label={words.table} tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.columns.when}</th>
            <th scope="col">{words.columns.what}</th>
            <th scope="col">{words.columns.value}</th>
            <th scope="col">{words.columns.warmth}</th>
          </tr>
        </thead>
        <tbody>
          {entries.toReversed().map((entry, at) => (
            <tr key={`${entry.day} ${entry.minute} ${at}`}>
              <th scope="row">{sayWhen(entry)}</th>
              <td>{words.entry[entry.what]}</td>
              <td>{valueOf(entry)}</td>
              <td>{entry.dryBulb === null ? "" : sayNumber(entry.dryBulb, LOCALE, 1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  </details>
);

const valueOf = ({ what, value }: BagEntry): string =>
  value === null ? "" : what === "read" ? sayPercent(value, LOCALE, 1) : sayGrams(value);
