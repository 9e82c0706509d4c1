import type { Coat } from "./coat.ts";
import type { Step } from "./step.ts";

/**
 * The ordered steps that make one kind of piece, with the coats they use inside: whole in itself, so that
 * a piece keeps the very process it was begun with whatever happens to the files.
 */
export interface ProcessDefinition {
  readonly name: string;
  /** What one piece is called, `lure`. */
  readonly piece: string;
  /** In the file's order; `after` makes the order of work, and never has a ring. */
  readonly steps: readonly Step[];
  /** Every coat its steps name, by name. */
  readonly coats: Readonly<Record<string, Coat>>;
  readonly note: string | null;
}

/** Content hash (hex, of the canonical JSON) naming one version of a process. */
export type ProcessHash = string;
