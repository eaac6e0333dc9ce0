/** While work goes on Ctrl+C once ends it with what there is, twice leaves at once. */
export async function stoppable<T>(
  work: Promise<T>,
  stop: () => void,
  complain: (line: string) => void,
): Promise<T> {
  let asked = false;
  const interrupted = (): void => {
    if (asked) process.exit(130); // as a shell counts an interrupt
    asked = true;
    stop();
    complain("Stopping with the best plan so far. Ctrl+C again leaves without a plan.");
  };
  process.on("SIGINT", interrupted);
  try {
    return await work;
  } finally {
    process.off("SIGINT", interrupted);
  }
}
