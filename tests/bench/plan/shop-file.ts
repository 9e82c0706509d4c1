/** A shop/1 file as it is written: our own neutral form of the bench's planning problem, in minutes from day 0, 00:00. */
export interface ShopFile {
  readonly format: "shop/1";
  readonly name: string;
  readonly operators: number;
  readonly horizon: number;
  readonly sessions: readonly (readonly [number, number])[];
  readonly holders: Readonly<Record<string, number>>;
  readonly setups: Readonly<Record<string, ShopSetUp>>;
  readonly exclusions: readonly { readonly after: string; readonly forbids: string }[];
  readonly wipCap: number | null;
  readonly objective: { readonly tardy: number; readonly flow: number };
  readonly pieces: readonly ShopPiece[];
}

export type ShopSetUp =
  | { readonly type: "family"; readonly minutes: number }
  | { readonly type: "heat"; readonly minutes: number; readonly keep: number }
  | { readonly type: "mix"; readonly minutes: number; readonly potLife: number };

export interface ShopPiece {
  readonly release: number;
  readonly due: number;
  readonly weight: number;
  readonly steps: readonly ShopStep[];
  /** `[a, b, least, most or null]` from the end of a to the start of b. */
  readonly edges: readonly (readonly [number, number, number, number | null])[];
  readonly finalCure: number;
}

export interface ShopStep {
  readonly p: number;
  readonly station: string | null;
  readonly family: string | null;
  readonly tags: readonly string[];
  readonly marks: Readonly<Record<string, number>>;
  readonly hold: { readonly holder: string; readonly minutes: number } | null;
}

/** A schedule of one: the start of hands-on by piece and step; `forceSetup` where a set-up is made that is not needed. */
export interface ShopSolution {
  readonly starts: readonly (readonly number[])[];
  readonly forceSetup?: readonly (readonly boolean[])[];
}
