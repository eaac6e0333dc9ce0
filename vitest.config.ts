import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    testTimeout: 600_000, // ends what hangs; a slow machine is no fault,
    hookTimeout: 600_000,
    reporters: ["default", "./scripts/closing-line.ts"],
    maxWorkers: 2,
  },
});
