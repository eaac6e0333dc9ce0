import { Cadical } from "cadical-wasm";
import type { Sat } from "../../core/care/proof/circuit.ts";

/** A fresh CaDiCaL solver; free its memory with `close`. */
export async function startSat(): Promise<Sat & { readonly close: () => void }> {
  const solver = await Cadical.create({ quiet: true });
  return {
    clause: (literals) => solver.addClause(literals),
    solve: (assumed) => solver.solve({ assumptions: assumed }) === "satisfiable",
    value: (variable) => solver.value(variable) === true,
    close: () => solver.dispose(),
  };
}
