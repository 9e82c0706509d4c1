import { describe, expect, test } from "vitest";
import { hoursProblems } from "../../src/process/check-hours.ts";
import type { ProcessDefinition } from "../../src/process/definition.ts";
import { sayHoursProblem } from "../../src/process/say-hours-problem.ts";
import type { BenchHours, WeeklyHours } from "../../src/time/bench-hours.ts";
import { readZone } from "../../src/time/read-zone.ts";
import { ASSUMED_HOURS } from "../../src/time/sessions.ts";
import type { Zone } from "../../src/time/zone.ts";
import { readWalker } from "./shipped-files.ts";

const dublin = zoneNamed("Europe/Dublin");
const walker = readWalker();
const MONDAY = "2026-03-23";

function zoneNamed(name: string): Zone {
  const zone = readZone(name);
  if (zone === null) throw new Error(`no zone ${name}`);
  return zone;
}

function weekly(...days: [opens: number, closes: number][][]): BenchHours {
  const hours: WeeklyHours = days.map((day) =>
    day.map(([opens, closes]) => ({ opens: opens * 60, closes: closes * 60 })),
  );
  return { weekly: [{ from: "1970-01-01", hours }], days: {}, away: [] };
}

function everyDay(opens: number, closes: number): BenchHours {
  return weekly(...Array.from({ length: 7 }, (): [number, number][] => [[opens, closes]]));
}

function say(hours: BenchHours, definition: ProcessDefinition = walker, from = MONDAY): string[] {
  return hoursProblems(definition, hours, dublin, from).map(sayHoursProblem);
}

/** The walker with other hands-on minutes for the next coat. */
function withNext(minutes: number): ProcessDefinition {
  const handsOn = { low: minutes, likely: minutes, high: minutes };
  const steps = walker.steps.map((step) => (step.name === "second seal" ? { ...step, handsOn } : step));
  return { ...walker, steps };
}

describe("windows that shut before the bench opens again", () => {
  test("varnish on a Saturday: with a next coat of 8 min it must hang by 11:52, and shuts on Sunday by the new clock", () => {
    const [seal] = hoursProblems(withNext(8), ASSUMED_HOURS, dublin, MONDAY);
    // Hung 11:52 it opens 15:52, and 8 min are left till 16:00. Hung 11:53 there are 7 left, and the window shuts 24 h
    // later: 11:53 + 24 h + 1 h, for clocks go forward that night, is Sunday 12:53. The bench opens Monday 18:00.
    expect(seal).toEqual({
      kind: "window missed",
      step: "seal",
      next: "second seal",
      always: false,
      weekdays: [6],
      from: 11 * 60 + 53,
      to: 16 * 60,
      opens: { weekday: 6, minute: 15 * 60 + 53 },
      shuts: { weekday: 7, minute: 12 * 60 + 53 },
      reopens: { weekday: 1, minute: 18 * 60 },
      first: "scuff",
    });
    expect(seal && sayHoursProblem(seal)).toBe(
      '"seal" hung Saturday 11:53 to 16:00: "second seal" cannot be begun in time (hung 11:53 it opens Saturday 15:53 ' +
        "and shuts Sunday 12:53, the bench opens Monday 18:00); hang it at another time, or count on a scuff",
    );
  });

  test("weekdays are told from Monday on, whatever day it is asked on", () => {
    const [seal] = hoursProblems(withNext(8), ASSUMED_HOURS, dublin, MONDAY);
    if (seal?.kind !== "window missed") throw new Error(seal?.kind);
    expect(sayHoursProblem({ ...seal, weekdays: [3, 4, 5, 1, 2] })).toMatch(
      /^"seal" hung Monday to Friday 11:53/,
    );
  });

  test("a week later, without a clock change, the same shuts at 11:53", () => {
    const [seal] = hoursProblems(withNext(8), ASSUMED_HOURS, dublin, "2026-04-06");
    expect(seal).toMatchObject({ weekdays: [6], from: 713, shuts: { weekday: 7, minute: 11 * 60 + 53 } });
  });

  test("detail waits for dry-hard, 12 h, so that all of Saturday is too late for the first clear", () => {
    // Soonest hung 9:00 + 8 min; hard 21:08 when the bench is shut; shuts Sunday 9:08 (10:08 by the new clock).
    // That the airbrush stands loaded from the day before is taken as possible.
    expect(say(ASSUMED_HOURS).filter((line) => line.startsWith('"first clear"'))).toEqual([
      expect.stringContaining('"first clear" hung Saturday 09:08 to 16:00: "detail" cannot be begun in time'),
    ]);
  });

  test("on evenings alone, every day, nothing is missed: 24 h later the bench is open again", () => {
    expect(say(everyDay(18, 21))).toEqual([]);
  });

  test("on Mondays alone every window is missed, whenever the coat is hung", () => {
    const mondays = weekly([[18, 21]], [], [], [], [], [], []);
    const told = say(mondays);
    expect(told.some((line) => line.startsWith('"seal" hung Monday 18:06 to 21:00'))).toBe(true);
    expect(told[0]).toContain("no session of the week is early enough: count on a scuff");
    expect(told[0]).toContain("shuts Tuesday 18:06, the bench opens Monday 18:00");
  });

  test("equal times of several days are told once", () => {
    const short = { ...walker.coats.varnish, windows: [{ opens: 240, shuts: 1_200, first: null }] };
    const definition = { ...walker, coats: { ...walker.coats, varnish: short } } as ProcessDefinition;
    const seal = say(everyDay(18, 21), definition, "2026-04-06").filter((line) => line.startsWith('"seal"'));
    // Shuts 20 h later, from 14:06 to 17:00 next day: the bench opens at 18:00. A coat without a later window is lost.
    expect(seal).toEqual([
      expect.stringMatching(
        /hung Monday to Sunday 18:06 to 21:00.*is early enough: no later window follows$/,
      ),
    ]);
  });
});

describe("steps and sessions", () => {
  test("a step longer than any session with its set-up and putting away", () => {
    // 20 min to melt, 6 to pour, 5 to put away: 31 min in half an hour
    expect(say(everyDay(18, 18.5))).toContain(
      '"pour the ballast" takes 31 min with its set-up and putting away, longer than any session (the longest is ' +
        "30 min); split the step, or open the bench for longer",
    );
    // Shaping, 40 min, may stop and so is done in parts.
    expect(say(everyDay(18, 18.5)).filter((line) => line.startsWith('"shape"'))).toEqual([]);
    expect(say(everyDay(18, 18 + 31 / 60)).filter((line) => line.includes("longer than any"))).toEqual([]);
  });

  test("a bench that does not open", () => {
    const away: BenchHours = { ...ASSUMED_HOURS, away: [{ from: "2026-03-01", to: "2026-05-31" }] };
    expect(say(away)).toEqual(["the bench does not open at all in these four weeks; say your hours"]);
  });
});
