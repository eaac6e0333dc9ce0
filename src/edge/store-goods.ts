import type { Norms } from "../core/care/norms.ts";
import type { Finish } from "../core/plan/plan.ts";
import { type Goods, loadGoods } from "../core/stores/goods/goods.ts";
import type { StoreMeans } from "../core/stores/projection/store-outlook.ts";
import type { StockNow } from "../core/stores/use/stock-now.ts";
import { readPublished } from "./published.ts";

export const publishedGoods = (): Goods =>
  loadGoods(readPublished("goods.json"), readPublished("substitutes.json"));

/** What the outlook of stores asks, from the published tables, the team's own counts and the plan. */
export const storeMeans = (
  norms: Norms,
  { measured }: Pick<StockNow, "measured">,
  finish?: Finish,
): StoreMeans => ({
  norms,
  goods: publishedGoods(),
  measured,
  ...(finish ? { finish } : {}),
});
