import type { Plan } from "../../../core/plan/plan.ts";
import { Orders } from "../orders/orders.tsx";
import { Papers } from "../papers/papers.tsx";
import { Picture } from "../picture/picture.tsx";
import { Sheets } from "../sheets/sheets.tsx";
import type { PaperFile } from "../use-plan.ts";

/** What is sent and printed: orders, day sheets, papers, the plan in one picture. */
export const PapersScreen = (p: { readonly plan: Plan; readonly papers: readonly PaperFile[] | null }) => (
  <>
    <Papers papers={p.papers} />
    <Orders plan={p.plan} />
    <Sheets plan={p.plan} />
    <Picture plan={p.plan} />
  </>
);
