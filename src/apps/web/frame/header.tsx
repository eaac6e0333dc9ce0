import type { Plan } from "../../../core/plan/plan.ts";
import { sayDay, sayDayRange } from "../../../core/say/dates.ts";
import { frame } from "../../../core/say/page.ts";
import "./header.css";
import { count, LOCALE } from "./reader.ts";

export const Header = ({ plan }: { plan: Plan }) => (
  <header className="header">
    <p className="header-product">{frame.product}</p>
    <h1>{plan.campaign}</h1>
    <p>{plan.place}</p>
    <p className="quiet">
      {frame.madeFor(sayDay(plan.planFrom, LOCALE, "full"))} ·{" "}
      {frame.runs(sayDayRange(plan.start, plan.end, LOCALE))} ·{" "}
      {frame.items(count(plan.itemCount), count(plan.doneBefore))}
    </p>
  </header>
);
