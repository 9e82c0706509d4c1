import { tmpdir } from "node:os";
import { join } from "node:path";
import { defineConfig } from "vitest/config";

export default defineConfig({
  root: join(import.meta.dirname, ".."),
  // Caches live outside the clone, so that a read-only clone can be tested.
  cacheDir: join(tmpdir(), "dryline-vitest"),
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    pool: "forks",
    maxWorkers: 2,
    testTimeout: 30_000,
    hookTimeout: 30_000,
  },
});
