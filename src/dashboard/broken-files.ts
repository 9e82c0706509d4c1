import type { Facts } from "./state.ts";

/** That process or coat files cannot be used, as long as it is so; empty: all can. */
export function sayBrokenFiles(facts: Facts | null): string {
  const count = facts?.fileProblems.length ?? 0;
  return count === 0 ? "" : `Some files cannot be used: dryline process check says why (${count}).`;
}
