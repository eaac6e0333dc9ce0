import type { Problem } from "../../core/outcome/problem.ts";
import { count, problem, type Where } from "./problem.ts";
import { isBlank, type RawRow, type RowFault, shown } from "./raw-table.ts";

/** The problem of a row that could not be cut into cells as it should. */
export function faultOf({ cells }: RawRow, fault: RowFault, where: Where): Problem {
  switch (fault) {
    case "merged-across":
      return problem(fault, "stop", where, {
        got: cells
          .filter((cell) => !isBlank(cell))
          .map(shown)
          .join(", ")
          .slice(0, 60),
        remedy: "Unmerge the cells; if the row is only a title among the data, take it out.",
      });
    case "cell-too-long":
      return problem(fault, "stop", where, {
        got: count(cells.reduce<number>((most, cell) => Math.max(most, shown(cell).length), 0)),
        remedy: "Close the quotation mark, or shorten the text.",
      });
    default:
      return problem(fault, "stop", where, {
        got: shown(cells.at(-1)).slice(0, 60),
        remedy: 'Close the mark, or write a mark inside a text twice ("").',
      });
  }
}
