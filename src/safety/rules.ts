import type { Caution, KeepApart } from "../process/hazard.ts";

export type { Caution, KeepApart };

/** The safety data in force: the shipped files, with the maker's own beside them. */
export interface SafetyRules {
  readonly keepApart: readonly KeepApart[];
  readonly cautions: Readonly<Record<string, Caution>>;
}
