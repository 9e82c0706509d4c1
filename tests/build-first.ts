import type { TestProject } from "vitest/node";
import { ensureBuilt } from "../src/fresh.mjs";

declare module "vitest" {
  interface ProvidedContext {
    /** Why dist/ does not match the sources; null: it does. */
    buildTrouble: string | null;
  }
}

/**
 * Tests that run the real program want it built from the sources as they are. Runs once before all tests and writes
 * nothing when the build is fresh. A build that fails is one failed test (start.test.ts) and not the end of the run:
 * the tests of a room need no build.
 */
export default async function buildFirst(project: TestProject): Promise<void> {
  const trouble = await ensureBuilt().catch(String);
  if (trouble !== undefined) console.error(`The program in dist/ is missing or stale: ${trouble}`);
  project.provide("buildTrouble", trouble ?? null);
}
