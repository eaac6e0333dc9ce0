/**
 * Gathers what is asked for while one write runs, and writes it together: a hundred small wishes cost one wait for the disk.
 * @param write answers one result for each wish, in their order   @param most wishes in one write
 */
export function gathered<Wish, Answer>(
  write: (wishes: readonly Wish[]) => Promise<readonly Answer[]>,
  most: number,
): { ask(wish: Wish): Promise<Answer>; idle(): Promise<void> } {
  const waiting: { wish: Wish; resolve(answer: Answer): void; reject(error: unknown): void }[] = [];
  let running: Promise<void> | null = null;

  async function run(): Promise<void> {
    await new Promise((next) => setImmediate(next)); // so that wishes made in one breath go together
    for (let now = waiting.splice(0, most); now.length > 0; now = waiting.splice(0, most))
      try {
        const answers = await write(now.map(({ wish }) => wish));
        for (const [at, { resolve }] of now.entries()) resolve(answers[at] as Answer); // one for each
      } catch (error) {
        for (const { reject } of now) reject(error);
      }
    running = null;
  }

  return {
    ask: (wish) =>
      new Promise((resolve, reject) => {
        waiting.push({ wish, resolve, reject });
        running ??= run();
      }),
    idle: async () => {
      await running;
    },
  };
}
