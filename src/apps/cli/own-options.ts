import { parseArgs } from "node:util";

/** Options and arguments of a command; null with the help said when it was asked for, or when they do not fit. */
export function askedOf<K extends string>(
  args: string[],
  { help, least, most, flags = [] }: { help: string; least: number; most: number; flags?: readonly K[] },
  out: (line: string) => void,
  complain: (line: string) => void,
): { readonly given: readonly string[]; readonly has: (flag: K) => boolean } | { readonly exit: number } {
  try {
    const options = Object.fromEntries(
      [...flags, "help"].map((name) => [name, { type: "boolean" as const }]),
    );
    const { values, positionals } = parseArgs({ args, allowPositionals: true, options });
    if (values.help === true) {
      out(help);
      return { exit: 0 };
    }
    if (positionals.length >= least && positionals.length <= most)
      return { given: positionals, has: (flag) => values[flag] === true };
    complain(help);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    complain(`${error.message}\n\n${help}`);
  }
  return { exit: 2 };
}
