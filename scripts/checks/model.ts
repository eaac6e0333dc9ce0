/** What one row of a check file gives a model, and what comes back under the names of the row's `expected`. */
export type Inputs = Readonly<Record<string, unknown>>;
export type CheckModel = (inputs: Inputs) => Readonly<Record<string, unknown>>;
/** Model name of the check files, e.g. `psychro.satPressure` → our function behind it. */
export type CheckModels = Readonly<Record<string, CheckModel>>;

/** A number among the inputs. @throws TypeError naming the input when it is absent or no number. */
export function num(inputs: Inputs, name: string): number {
  const value = inputs[name];
  if (typeof value !== "number")
    throw new TypeError(`input "${name}" is ${JSON.stringify(value)}, expected a number`);
  return value;
}
