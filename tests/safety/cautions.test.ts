import { describe, expect, test } from "vitest";
import { cautionsFor, unreadCautions } from "../../src/safety/cautions.ts";
import { Diary } from "../fixtures/diary.ts";
import { makeStep, scuff, walker, walkerRules } from "../fixtures/walker.ts";
import { at, moment } from "../fixtures/week-time.ts";

const stepOf = (name: string) => walker.steps.find((step) => step.name === name) ?? makeStep("none", 0);
const heat = { way: "heat", minutes: 45 } as const;

function unread(diary: Diary, name: string, when: string, station = "bench"): boolean {
  return unreadCautions([name], diary.shop(), walkerRules, moment(when), station).length > 0;
}

describe("which cautions work asks for", () => {
  test("those of the step, its set-up and its coat, each once", () => {
    expect(cautionsFor(stepOf("pour the ballast"), walker, "step")).toEqual(["molten lead"]);
    expect(cautionsFor(stepOf("seal"), walker, "step")).toEqual(["solvent vapour"]);
    expect(cautionsFor(stepOf("water test"), walker, "step")).toEqual([]);
  });

  test("a scuff asks for its own, lighting the pot for all of the pour's", () => {
    expect(cautionsFor(stepOf("seal"), walker, "preparation", scuff)).toEqual(["wood and foam dust"]);
    expect(cautionsFor(stepOf("pour the ballast"), walker, "set-up")).toEqual(["molten lead"]);
    expect(cautionsFor(stepOf("last clear"), walker, "set-up")).toEqual(["epoxy"]);
  });
});

describe("a caution told once per bench session", () => {
  test("read at 18:05 is read till 21:00, and unread the next evening", () => {
    const diary = new Diary(walker);
    expect(unread(diary, "epoxy", "Mon 18:04")).toBe(true);
    diary.tick("epoxy", "Mon 18:05");
    expect(unread(diary, "epoxy", "Mon 20:59")).toBe(false);
    expect(unread(diary, "solvent vapour", "Mon 20:59")).toBe(true);
    expect(unread(diary, "epoxy", "Tue 18:00")).toBe(true);
  });

  test("outside bench hours holds for 12 h", () => {
    const diary = new Diary(walker);
    diary.tick("epoxy", "Sun 10:00");
    expect(unread(diary, "epoxy", "Sun 22:00")).toBe(false);
    expect(unread(diary, "epoxy", "Sun 22:01")).toBe(true);
  });

  test("is not read by a tick still to come", () => {
    const diary = new Diary(walker);
    diary.tick("epoxy", "Mon 19:00");
    expect(unread(diary, "epoxy", "Mon 18:59")).toBe(true);
  });
});

describe("molten lead, told once per melt", () => {
  test("read before the pot is lit at 19:50, no second reading for a second pour", () => {
    const diary = new Diary(walker);
    diary.tick("molten lead", "Mon 19:48");
    diary.ready("lead pot", "melt lead", "Mon 19:50", {
      begun: at("Mon 19:50"),
      ready: at("Mon 20:10"),
      keeps: heat,
    });
    expect(unread(diary, "molten lead", "Mon 20:12", "lead pot")).toBe(false);
    expect(unread(diary, "molten lead", "Mon 20:40", "lead pot")).toBe(false);
  });

  test("put away and lit again in the same evening, it is to be read again", () => {
    const diary = new Diary(walker);
    diary.tick("molten lead", "Mon 18:05");
    diary.ready("lead pot", "melt lead", "Mon 18:30", { begun: at("Mon 18:10"), keeps: heat });
    diary.putAway("lead pot", "Mon 19:00");
    expect(unread(diary, "molten lead", "Mon 19:01", "lead pot")).toBe(true);
    diary.tick("molten lead", "Mon 19:02");
    diary.ready("lead pot", "melt lead", "Mon 19:25", { begun: at("Mon 19:05"), keeps: heat });
    expect(unread(diary, "molten lead", "Mon 19:30", "lead pot")).toBe(false);
  });

  test("a pot forgotten since Monday is no reading for Tuesday's melt", () => {
    const diary = new Diary(walker);
    diary.tick("molten lead", "Mon 18:05");
    diary.ready("lead pot", "melt lead", "Mon 18:30", { begun: at("Mon 18:10"), keeps: heat });
    expect(unread(diary, "molten lead", "Mon 19:14", "lead pot")).toBe(false);
    // Kept till 19:15: that was the melt's end, in the same session too.
    expect(unread(diary, "molten lead", "Mon 19:15", "lead pot")).toBe(true);
    expect(unread(diary, "molten lead", "Tue 18:10", "lead pot")).toBe(true);
  });

  test("a melt that lasts past the session's end is still that melt", () => {
    const diary = new Diary(walker);
    diary.tick("molten lead", "Mon 20:35");
    diary.ready("lead pot", "melt lead", "Mon 20:55", { begun: at("Mon 20:35"), keeps: heat });
    expect(unread(diary, "molten lead", "Mon 21:20", "lead pot")).toBe(false);
  });
});

test("a caution that nobody wrote down is asked for like any other, once per session", () => {
  const diary = new Diary(walker);
  expect(unread(diary, "toString", "Mon 18:00")).toBe(true);
  diary.tick("toString", "Mon 18:00");
  expect(unread(diary, "toString", "Mon 18:01")).toBe(false);
});
