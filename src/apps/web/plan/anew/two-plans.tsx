import { sayDay, sayPercent } from "../../../../core/say/dates.ts";
import { anew as words } from "../../../../core/say/rooms/plan.ts";
import type { Day } from "../../../../core/units/day.ts";
import type { PlanGist } from "../../../server/plan-maker-messages.ts";
import { count, LOCALE } from "../../frame/reader.ts";

const day = (of: Day | null): string => (of === null ? words.notByEnd : sayDay(of, LOCALE));
const n = (value: number): string => (value === 0 ? words.nothing : count(value).text);
const noTime = ({ left }: PlanGist) => left.filter(({ kind }) => kind === "no time");

const ROWS: readonly (readonly [label: string, cell: (of: PlanGist) => string])[] = [
  [words.rows.morning, ({ planFrom }) => sayDay(planFrom, LOCALE)],
  [words.rows.half, ({ finish }) => day(finish.p50)],
  [words.rows.ten, ({ finish }) => day(finish.p10)],
  [words.rows.ninety, ({ finish }) => day(finish.p90)],
  [words.rows.boxed, ({ finish }) => count(Math.round(finish.boxed.p50)).text],
  [words.rows.left, (of) => n(noTime(of).length)],
  [words.rows.must, (of) => n(noTime(of).filter(({ must }) => must).length)],
  [words.rows.late, ({ orders }) => n(orders.filter(({ late }) => late).length)],
  [words.rows.gap, ({ proof }) => sayPercent(proof.itemGap, LOCALE, 1)],
];

/** What a lead compares, of the plan now and the new one. */
export const TwoPlans = ({ plan, fresh }: { readonly plan: PlanGist | null; readonly fresh: PlanGist }) => (
  <div className="wide" tabIndex={0} role="group" aria-label={words.compared}>
    <table>
      <thead>
        <tr>
          <td />
          {plan && <th scope="col">{words.plan}</th>}
          <th scope="col">{words.fresh}</th>
        </tr>
      </thead>
      <tbody>
        {ROWS.map(([label, cell]) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            {plan && <td>{cell(plan)}</td>}
            <td>{cell(fresh)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);
