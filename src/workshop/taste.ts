/** What the maker prefers to see; nothing here changes an answer (that is settled in the journal). */
export interface Taste {
  readonly units: "metric" | "us";
  readonly clock: "24 h" | "12 h";
  /** 1 Monday (ISO 8601) to 7 Sunday. */
  readonly firstDayOfWeek: number;
  readonly colour: boolean;
}

export const USUAL_TASTE: Taste = { units: "metric", clock: "24 h", firstDayOfWeek: 1, colour: true };

/** Each taste with the words it may be given and what it then is. */
export const TASTE_WORDS: { readonly [K in keyof Taste]: Readonly<Record<string, Taste[K]>> } = {
  units: { metric: "metric", us: "us" },
  clock: { "24 h": "24 h", "12 h": "12 h", "24": "24 h", "12": "12 h" },
  firstDayOfWeek: { Mon: 1, Tue: 2, Wed: 3, Thu: 4, Fri: 5, Sat: 6, Sun: 7 },
  colour: { on: true, off: false },
};

/** Makes a taste of whatever a file held: what is not understood falls back to the usual, and is named. */
export function tasteFrom(stored: unknown): { readonly taste: Taste; readonly strange: readonly string[] } {
  const given = typeof stored === "object" && stored !== null ? (stored as Record<string, unknown>) : {};
  const strange: string[] = [];
  const pick = <K extends keyof Taste>(key: K): Taste[K] => {
    const value = given[key];
    if (value === undefined) return USUAL_TASTE[key];
    const known = Object.values(TASTE_WORDS[key]).find((choice) => choice === value);
    if (known !== undefined) return known as Taste[K];
    strange.push(key);
    return USUAL_TASTE[key];
  };
  return {
    taste: {
      units: pick("units"),
      clock: pick("clock"),
      firstDayOfWeek: pick("firstDayOfWeek"),
      colour: pick("colour"),
    },
    strange,
  };
}
