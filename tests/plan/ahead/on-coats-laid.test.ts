import { describe, expect, test } from "vitest";
import { Diary } from "../../fixtures/diary.ts";
import { inARow, makeCoat, makeProcess, makeStep, varnish } from "../../fixtures/walker.ts";
import { askPlan, clock, timetable } from "./ask-plan.ts";

const slow = makeCoat("slow", { stages: { "dust-free": 60, "dry-hard": 720 } });

/** A coat, wire to bend at any time, and hangers once the wire is bent and the coat is dry-hard after 12 h. */
const branching = makeProcess(
  "branching",
  [
    makeStep("coat", 6, { coat: "slow", place: "rack" }),
    makeStep("bend", 8),
    makeStep("hangers", 10, { after: ["coat", "bend"], waitsFor: "dry-hard" }),
    makeStep("test", 10, { after: ["hangers"] }),
  ],
  [slow],
);

function coated(): Diary {
  const diary = new Diary(branching);
  diary.tag(1, "Mon 17:00");
  diary.take(1, "coat", "Mon 18:00");
  diary.hang(1, "coat", "Mon 18:06");
  return diary;
}

describe("work upon a coat that lies there, before it other work that is not done", () => {
  test("waits for the coat, too: bent at once, the hangers fitted when it is dry-hard", () => {
    // 18:06 + 12 h = Tue 06:06; the bench opens Tue 18:00.
    expect(timetable(askPlan(coated(), "Mon 18:10"))).toEqual([
      "Mon 18:10-18:18 1 bend",
      "Tue 18:00-18:10 1 hangers",
      "Tue 18:10-18:20 1 test",
    ]);
  });

  test("finds no time before a touch says that a tacky coat is hard", () => {
    const diary = coated();
    diary.touch(1, "coat", "tacky", "Mon 18:30");
    const { pieces, sessions } = askPlan(diary, "Mon 18:40");
    expect(sessions.flatMap(({ rows }) => rows.map(({ step }) => step))).toEqual(["bend"]);
    expect(pieces[0]).toMatchObject({
      lastHandsOn: null,
      noTime: { because: "touch first", step: "hangers" },
    });
  });

  test("meets the coat's window or its preparation: sanding between does not make it forgotten", () => {
    const sanded = makeProcess(
      "sanded",
      inARow([
        makeStep("seal", 6, { coat: "varnish", place: "rack" }),
        makeStep("sand", 8, { waitsFor: "dry-hard" }),
        makeStep("second", 6, { coat: "varnish", place: "rack" }),
      ]),
      [varnish],
    );
    const diary = new Diary(sanded);
    // Dry-hard Tue 05:00, shut from Tue 17:00 on but for a scuff of 5 min; the bench opens Tue 18:00.
    diary.came(1, "seal", "Mon 17:00", "Mon 17:30");
    expect(timetable(askPlan(diary, "Mon 18:00"))).toEqual([
      "Tue 18:00-18:08 1 sand",
      "Tue 18:08-18:13 1 preparation second",
      "Tue 18:13-18:19 1 second",
    ]);
  });

  test("waits as long as a step that is done asks, though another before it is not", () => {
    const soaked = makeProcess("soaked", [
      makeStep("soak", 5, { wait: 2 * 1440 }),
      makeStep("bend", 8),
      makeStep("join", 10, { after: ["soak", "bend"] }),
    ]);
    const diary = new Diary(soaked);
    diary.tag(1, "Mon 17:00");
    diary.hang(1, "soak", "Mon 18:05");
    const { pieces } = askPlan(diary, "Mon 18:10");
    // Mon 18:05 + 2 days = Wed 18:05.
    expect(clock(pieces[0]?.lastHandsOn ?? null)).toBe("Wed 18:15");
  });
});
