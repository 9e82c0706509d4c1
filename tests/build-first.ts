import { ensureBuilt } from "../src/fresh.mjs";

/**
 * Tests that run the real program want it built from the sources as they are. Runs once before all tests and writes
 * nothing when the build is fresh.
 *
 * @throws when it can be neither found fresh nor built
 */
export default async function buildFirst(): Promise<void> {
  const refusal = await ensureBuilt();
  if (refusal !== undefined) throw new Error(refusal);
}
