import { builtCommand } from "../../src/fresh.mjs";
import { compareRuns, type Row } from "./compare-runs.ts";

/** How long the whole command takes from nothing, against a Node that does nothing. */
export function measure(): Row[] {
  const bare = { name: "node -e 0", args: ["-e", "0"] };
  return compareRuns(bare, [{ name: "dryline --version", args: [builtCommand, "--version"] }], 31);
}
