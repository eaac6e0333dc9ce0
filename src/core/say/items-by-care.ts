import type { Route } from "../care/care.ts";
import type { ItemsMeant } from "../plan/what-if/names.ts";
import { sayCondition } from "./conditions.ts";

/** Items by what care decided of them: "mouldy", or a condition by its name. */
export function itemsByCare(routes: readonly Route[]): ItemsMeant {
  const having = (is: (condition: string) => boolean): string[] =>
    routes.filter((each) => each.destiny === "route" && each.conditions.some(is)).map((each) => each.item);
  return (words) => {
    if (/^mould(y|ed)?( ones| things)?$/.test(words)) return having((each) => each.startsWith("mould_"));
    const items = having(
      (each) => each.replaceAll("_", " ") === words || sayCondition(each).toLowerCase() === words,
    );
    return items.length > 0 ? items : null;
  };
}
