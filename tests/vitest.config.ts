import { tmpdir } from "node:os";
import { join } from "node:path";
import { defineConfig } from "vitest/config";
import { driver } from "../src/journal/driver.mjs";

export default defineConfig({
  root: join(import.meta.dirname, ".."),
  // Outside the clone, so that a read-only one can be tested; one for each user, so that nobody meets another's files.
  cacheDir: join(tmpdir(), `dryline-vitest-${process.getuid?.() ?? "user"}`),
  resolve: { alias: [{ find: /^better-sqlite3$/, replacement: driver }] },
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    globalSetup: join(import.meta.dirname, "build-first.ts"),
    setupFiles: [join(import.meta.dirname, "same-seed.ts")],
    pool: "forks",
    maxWorkers: 2,
    testTimeout: 30_000,
    hookTimeout: 30_000,
    // The libraries under test behave the same whatever the caller's NODE_ENV.
    env: { NODE_ENV: "test" },
  },
});
