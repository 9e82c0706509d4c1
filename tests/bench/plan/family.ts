/** What one family of benchmark files gives to `npm run bench -- plan`: how its files are known, and how they are solved. */
export interface Family {
  /** The name printed with each answer, such as "shop/1". */
  readonly format: string;
  reads(file: string, text: string): boolean;
  /** @throws FileTrouble when the file is not what its format promises */
  solve(text: string, ask: Ask): Answer;
}

export interface Ask {
  /** Milliseconds it may take; looked at only between rounds. */
  readonly ms: number;
  /** So many rounds and no more, whatever the time; null: as many as the time allows. */
  readonly rounds: number | null;
  readonly seed: number;
  /** The period asked for, where the format knows one. */
  readonly period: number | null;
}

/** "optimal" and "infeasible" are proven. */
export interface Answer {
  readonly status: "optimal" | "feasible" | "infeasible" | "unknown";
  readonly objective: number | null;
  /** No solution is better than this; null: nothing is known. */
  readonly bound: number | null;
  readonly rounds: number;
  /** As the format gives its solutions; null: there is none to show. */
  readonly starts: unknown;
}

/** A file that cannot be read as what it says it is, told in one sentence. */
export class FileTrouble extends Error {}
