/** A rotation file ("rotation/1") as it is written: one routing, every step once each period, one operator. */
export interface RotationFile {
  readonly format: "rotation/1";
  /** Opening and closing, in minutes of each day. */
  readonly bench: readonly [opens: number, closes: number];
  readonly day: number;
  readonly hooks: number | null;
  readonly setups: Readonly<Record<string, { readonly type: string; readonly minutes: number }>>;
  readonly exclusions: readonly { readonly after: string; readonly forbids: string }[];
  readonly steps: readonly {
    readonly name: string;
    readonly p: number;
    readonly station: string | null;
    readonly family: string | null;
    readonly tags: readonly string[];
    /** Minutes after the step's end, by what is in the air. */
    readonly marks: Readonly<Record<string, number>>;
    readonly hold: { readonly holder: string; readonly minutes: number } | null;
  }[];
  /** From the end of a step to the start of another. */
  readonly edges: readonly (readonly [from: number, to: number, least: number, most: number | null])[];
  readonly finalCure: number;
}
