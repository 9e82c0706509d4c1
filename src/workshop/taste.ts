/** What the maker prefers to see; nothing here changes an answer (that is settled in the journal). */
export interface Taste {
  readonly units: "metric" | "us";
  readonly clock: "24 h" | "12 h";
  /** 1 Monday (ISO 8601) to 7 Sunday. */
  readonly firstDayOfWeek: number;
  readonly colour: boolean;
}
