import type { IfLeft, NowAnswer, WaitingRow, WorkRow } from "../../src/plan/now-answer.ts";
import { at, dublin } from "../fixtures/week-time.ts";

export const speechAt = (when: string) => ({ zone: dublin, now: at(when), clock24: true });

export const costsNothing: IfLeft = {
  preparation: null,
  preparationFrom: null,
  mend: false,
  shut: [],
  finishNow: null,
  finishLeft: null,
  others: null,
};

export const sealing: WorkRow = {
  tags: [1, 2],
  name: null,
  process: "walker",
  step: "second seal",
  part: "step",
  preparation: null,
  station: "bench",
  colour: null,
  coat: "varnish",
  minutes: 12,
  setUp: null,
  opens: at("Mon 16:30"),
  shuts: at("Mon 20:00"),
  beginBy: at("Mon 20:00"),
  why: { because: "shuts tonight", at: at("Mon 20:00") },
  ifLeft: costsNothing,
  warning: null,
};

export const hanging: WaitingRow = {
  tag: 1,
  name: "perch",
  step: "second seal",
  stage: "dust-free",
  progress: 0.317,
  since: at("Mon 19:04"),
  opens: at("Mon 23:04"),
  shuts: at("Tue 19:04"),
  hard: at("Tue 07:04"),
  state: "drying",
  because: null,
  place: "rack",
  otherEnd: null,
};

export const nothing: NowAnswer = {
  at: at("Mon 20:59"),
  basis: "dispatch",
  plan: { is: "none", gap: null },
  work: [],
  inHand: [],
  waiting: [],
  held: [],
  prepared: [],
  air: null,
  cold: [],
  bench: {
    closes: at("Mon 21:00"),
    minutesLeft: 1,
    opensNext: at("Tue 18:00"),
    putAway: 0,
    assumedHours: false,
  },
};

export const pot = {
  station: "lead pot",
  setUp: "melt lead",
  state: "ready",
  ready: at("Mon 20:10"),
  until: at("Mon 21:03"),
  putAwayMinutes: 5,
} as const;
