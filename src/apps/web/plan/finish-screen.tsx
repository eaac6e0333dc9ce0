import type { Plan } from "../../../core/plan/plan.ts";
import { Answer } from "../answer/answer.tsx";
import { Binds } from "../binds/binds.tsx";
import { linkTo } from "../walls/where.ts";
import { Easier } from "./easier.tsx";

/** When it will be finished, what holds the date, and what would move it. */
export const FinishScreen = ({ plan }: { readonly plan: Plan }) => (
  <>
    <Answer plan={plan} leftLink={linkTo("plan", "left")} />
    <Binds plan={plan} />
    <Easier />
  </>
);
