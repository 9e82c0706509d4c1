import type {
  PieceForecast,
  PlanAnswer,
  PlannedPiece,
  PlannedRow,
  PlannedSession,
} from "../../src/plan/plan-answer.ts";
import type { Speech } from "../../src/words/speech.ts";
import { at, dublin } from "../fixtures/week-time.ts";

export const speech: Speech = { zone: dublin, now: at("Mon 17:00"), clock24: true };

export function makePiece(tag: number | null, changes: Partial<PlannedPiece> = {}): PlannedPiece {
  return { tag, nth: tag === null ? 1 : null, name: "smelt walker", process: "walker", ...changes };
}

export function makeRow(changes: Partial<PlannedRow> = {}): PlannedRow {
  return {
    pieces: [makePiece(14)],
    step: "first clear",
    part: "step",
    preparation: null,
    colour: null,
    coat: "varnish",
    station: "bench",
    setUp: null,
    from: at("Mon 18:00"),
    until: at("Mon 18:08"),
    shuts: null,
    minutes: 8,
    ofMinutes: null,
    looks: [],
    measures: [],
    cautions: [],
    inHand: false,
    tagsNew: false,
    finishes: [],
    ...changes,
  };
}

export function makeSession(changes: Partial<PlannedSession> = {}): PlannedSession {
  return {
    opens: at("Mon 18:00"),
    closes: at("Mon 21:00"),
    outsideHours: false,
    rows: [makeRow()],
    putAway: [],
    free: 172,
    ...changes,
  };
}

export function makeForecast(changes: Partial<PieceForecast> = {}): PieceForecast {
  return {
    piece: makePiece(14),
    lastHandsOn: at("Thu 19:02"),
    dryThrough: at("Sun 19:02"),
    due: null,
    late: null,
    noTime: null,
    ...changes,
  };
}

export function makePlan(changes: Partial<PlanAnswer> = {}): PlanAnswer {
  return {
    at: at("Mon 17:00"),
    days: 7,
    assumedHours: false,
    quality: { basis: "plan", proven: false, gapPercent: 4, broken: [] },
    sessions: [makeSession()],
    pieces: [makeForecast()],
    changes: null,
    whatIf: null,
    ...changes,
  };
}
