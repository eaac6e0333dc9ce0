import { sayNumber, sayPercent } from "../../../../core/say/dates.ts";
import { suppose as words } from "../../../../core/say/rooms/plan.ts";
import { compareRows } from "../../../../core/say/what-if.ts";
import { LOCALE } from "../../frame/reader.ts";
import type { Supposing } from "./use-supposing.ts";

/** The plan as it is and the supposed one, line by line. */
export function Beside({ now }: { readonly now: Supposing }) {
  const { asItIs, proved } = now;
  if (asItIs === null || proved === null || proved.difference === null) return null;
  const both = [asItIs.outlook, proved.outlook];
  const rows = compareRows(LOCALE).filter(({ idle }) => !idle?.(both));
  return (
    <>
      <div className="wide" tabIndex={0} role="group" aria-label={words.beside}>
        <table>
          <thead>
            <tr>
              <td />
              <th scope="col">{words.asItIs}</th>
              <th scope="col">{words.supposed}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ label, cell }) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td>{cell(asItIs.outlook, null)}</td>
                <td>{cell(proved.outlook, proved.difference)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="quiet">
        {words.draws(sayNumber(asItIs.draws, LOCALE))}{" "}
        {words.proof(share(asItIs.outlook.proof.itemGap), share(proved.outlook.proof.itemGap))}
      </p>
    </>
  );
}

const share = (gap: number): string => sayPercent(gap, LOCALE, 1);
