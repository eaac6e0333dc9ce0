import type { Programme } from "../../src/core/plan/programme.ts";

/** A programme as a free MPS file, as every optimiser reads it. Format: from memory, tried with cbc. */
export function mpsOf({
  cost,
  lower,
  upper,
  whole,
  rowLower,
  rowUpper,
  starts,
  indices,
  values,
}: Programme): string {
  const lines = ["NAME leafward FREE", "ROWS", " N cost"];
  const kinds = Array.from(rowLower, (low, r) => kindOf(low, rowUpper[r] as number));
  kinds.forEach((kind, r) => lines.push(` ${kind} r${r}`));
  const entries: string[][] = Array.from(cost, (each, c) => (each === 0 ? [] : [` c${c} cost ${each}`]));
  for (let r = 0; r < kinds.length; r++)
    for (let at = starts[r] as number; at < (starts[r + 1] as number); at++)
      entries[indices[at] as number]?.push(` c${indices[at]} r${r} ${values[at]}`);
  lines.push("COLUMNS");
  entries.forEach((each, c) => {
    const own = each.length > 0 ? each : [` c${c} cost 0`];
    if (whole[c]) lines.push(` m${c} 'MARKER' 'INTORG'`, ...own, ` n${c} 'MARKER' 'INTEND'`);
    else lines.push(...own);
  });
  lines.push("RHS");
  kinds.forEach((kind, r) => {
    const side = (kind === "G" ? rowLower : rowUpper)[r] as number;
    if (kind !== "N" && side !== 0) lines.push(` rhs r${r} ${side}`);
  });
  lines.push("RANGES");
  kinds.forEach((kind, r) => {
    const width = (rowUpper[r] as number) - (rowLower[r] as number);
    if (kind === "L" && Number.isFinite(width)) lines.push(` ranges r${r} ${width}`);
  });
  lines.push("BOUNDS");
  cost.forEach((_, c) => {
    lines.push(bound("LO", "MI", c, lower[c] as number), bound("UP", "PL", c, upper[c] as number));
  });
  lines.push("ENDATA");
  return `${lines.join("\n")}\n`;
}

function kindOf(low: number, high: number): "E" | "L" | "G" | "N" {
  if (low === high) return "E";
  if (Number.isFinite(high)) return "L";
  return Number.isFinite(low) ? "G" : "N";
}

const bound = (finite: string, endless: string, c: number, value: number): string =>
  Number.isFinite(value) ? ` ${finite} b c${c} ${value}` : ` ${endless} b c${c}`;
