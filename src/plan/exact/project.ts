/**
 * A project in the field's terms: activities with minimal and maximal time lags and renewable resources, to be
 * finished as early as can be (PS|temp|Cmax). Job shops, flow shops with or without waiting and the bench's own
 * small pieces all enter by this door. Whole numbers throughout; no clock, no calendar.
 */
export interface Project {
  readonly activities: readonly Activity[];
  readonly lags: readonly StartLag[];
  /** How much of each resource there is at any moment. */
  readonly capacities: readonly number[];
}

interface Activity {
  /** At least 0; runs without a break. */
  readonly duration: number;
  /** How much of each resource it takes while it runs, at least 0. */
  readonly demands: readonly number[];
}

/**
 * `start(to) >= start(from) + least`. A negative `least` on an arc back is a maximal lag:
 * `{ from: b, to: a, least: -9 }` says that b starts at most 9 after a.
 */
export interface StartLag {
  readonly from: number;
  readonly to: number;
  readonly least: number;
}

/** What is known of a project's shortest makespan: the latest end of an activity, counted from 0. */
export interface ProjectAnswer {
  /** `optimal` and `infeasible` are proven; `feasible` is a schedule without a proof; `unknown` is neither. */
  readonly status: "optimal" | "feasible" | "infeasible" | "unknown";
  /** Of the best schedule found. */
  readonly makespan: number | null;
  /** By activity. */
  readonly starts: readonly number[] | null;
  /** No schedule is shorter (proven); null when there is no schedule at all. */
  readonly bound: number | null;
  /** Decisions taken by the search. */
  readonly nodes: number;
}
