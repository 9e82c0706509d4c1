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
    setupFiles: [join(import.meta.dirname, "same-seed.ts"), join(import.meta.dirname, "zz-time.ts")],
    pool: "forks",
    maxWorkers: 2,
    // Files of tests run one after the other in the same two processes. No module of ours keeps changing state, and a
    // program compiled once serves them all.
    isolate: false,
    testTimeout: 30_000,
    hookTimeout: 30_000,
    // The libraries under test behave the same whatever the caller's NODE_ENV. No test goes to the net, and reading
    // certificates takes each program they start twice as long as all else of its start.
    env: { NODE_ENV: "test", NODE_EXTRA_CA_CERTS: "" },
  },
});
