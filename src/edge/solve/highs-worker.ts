import { parentPort } from "node:worker_threads";
import loadHighs from "highs";
import type { Programme, Solved, SolveOptions } from "../../core/plan/programme.ts";

// The package's types describe its CommonJS form; what is imported here is the function itself.
const highs = await (loadHighs as unknown as typeof loadHighs.default)();

/** One programme in, one answer out; the worker may then be used again. */

function solve(programme: Programme, options: SolveOptions): Solved {
  const model = highs.createModel({
    numCols: programme.cost.length,
    numRows: programme.rowLower.length,
    colCost: programme.cost,
    colLower: programme.lower,
    colUpper: programme.upper,
    rowLower: programme.rowLower,
    rowUpper: programme.rowUpper,
    matrix: {
      format: "csr",
      numRows: programme.rowLower.length,
      numCols: programme.cost.length,
      starts: programme.starts,
      indices: programme.indices,
      values: programme.values,
    },
    ...(options.relaxed ? {} : { integrality: Int32Array.from(programme.whole) }),
  });
  try {
    model.options.set({
      output_flag: false,
      random_seed: 1,
      mip_rel_gap: options.gap,
      // Starting over after the root costs more than it saves here: a third less time over seeded campaigns.
      ...(options.relaxed ? {} : { mip_max_nodes: 500, mip_allow_restart: false }),
    });
    model.run();
    const status = model.getModelStatus();
    const known = highs.constants.modelStatus;
    const objective = model.getObjectiveValue();
    const bound = options.relaxed ? objective : Number(model.info.get("mip_dual_bound"));
    const solution = model.getSolution();
    return {
      status:
        status === known.optimal
          ? options.relaxed || objective - bound < 1e-6 * Math.abs(objective)
            ? "optimal"
            : "gap reached"
          : status === known.infeasible
            ? "infeasible"
            : solution.colValue.length > 0
              ? "stopped"
              : "failed",
      objective,
      bound,
      values: Float64Array.from(solution.colValue),
      duals: options.relaxed ? Float64Array.from(solution.rowDual) : new Float64Array(0),
    };
  } finally {
    model.dispose();
  }
}

parentPort?.on(
  "message",
  ({ id, programme, options }: { id: number; programme: Programme; options: SolveOptions }) => {
    try {
      parentPort?.postMessage({ id, solved: solve(programme, options) });
    } catch (error) {
      parentPort?.postMessage({ id, failure: String(error) });
    }
  },
);
