import { describe, expect, test } from "vitest";
import { aimAt, handsAt, hoursOf } from "../../src/shop/settings-at.ts";
import { ASSUMED_HOURS, hoursOn } from "../../src/time/sessions.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker } from "../fixtures/walker.ts";
import { eveningHours } from "../fixtures/week-time.ts";

const week = eveningHours.weekly[0]?.hours ?? [];
const shut = [[], [], [], [], [], [], []] as const;

function settled(...settings: Parameters<Diary["settle"]>[0][]) {
  const diary = new Diary(walker);
  for (const setting of settings) diary.settle(setting, "Mon 18:00");
  return diary.shop().settings;
}

describe("bench hours", () => {
  test("are assumed until any are said", () => {
    expect(settled().hours).toBeNull();
    expect(hoursOf(settled())).toBe(ASSUMED_HOURS);
  });

  test("hold from their date on, and what was before stays true", () => {
    const hours = hoursOf(
      settled(
        { of: "hours", from: "2026-01-01", weekly: week },
        { of: "hours", from: "2026-03-25", weekly: shut },
      ),
    );
    expect(hoursOn(hours, "2026-03-24")).toEqual([{ opens: 1080, closes: 1260 }]);
    expect(hoursOn(hours, "2026-03-25")).toEqual([]);
  });

  test("of one day said for tonight differ for that day only, until they are taken back", () => {
    const late = [{ opens: 1080, closes: 1335 }];
    const tonight = { of: "day", date: "2026-03-26", hours: late } as const;
    const hours = hoursOf(settled({ of: "hours", from: "2026-01-01", weekly: week }, tonight));
    expect(hoursOn(hours, "2026-03-26")).toEqual(late);
    expect(hoursOn(hours, "2026-03-27")).toEqual([{ opens: 1080, closes: 1260 }]);
    const back = hoursOf(
      settled({ of: "hours", from: "2026-01-01", weekly: week }, tonight, { ...tonight, hours: null }),
    );
    expect(hoursOn(back, "2026-03-26")).toEqual([{ opens: 1080, closes: 1260 }]);
  });

  test("days away are shut; back early, those from then on are open again", () => {
    const away = { of: "away", from: "2026-03-30", to: "2026-04-12" } as const;
    const gone = hoursOf(settled({ of: "hours", from: "2026-01-01", weekly: week }, away));
    expect(hoursOn(gone, "2026-04-08")).toEqual([]);
    const early = hoursOf(
      settled({ of: "hours", from: "2026-01-01", weekly: week }, away, { of: "back", from: "2026-04-08" }),
    );
    expect(early.away).toEqual([{ from: "2026-03-30", to: "2026-04-07" }]);
    expect(hoursOn(early, "2026-04-07")).toEqual([]);
    expect(hoursOn(early, "2026-04-08")).toEqual([{ opens: 1080, closes: 1260 }]);
    // Back before they began, there are none; days away long past stay as they were.
    expect(settled(away, { of: "back", from: "2026-03-29" }).hours?.away).toEqual([]);
    expect(settled(away, { of: "back", from: "2026-05-01" }).hours?.away).toEqual([
      { from: "2026-03-30", to: "2026-04-12" },
    ]);
  });
});

describe("other settings", () => {
  test("an aim holds from its date until the next", () => {
    const settings = settled(
      { of: "aim", from: "2026-03-01", finishedPerWeek: 3, out: null },
      { of: "aim", from: "2026-04-01", finishedPerWeek: 5, out: 8 },
    );
    expect(aimAt(settings, "2026-02-28")).toBeNull();
    expect(aimAt(settings, "2026-03-31")?.finishedPerWeek).toBe(3);
    expect(aimAt(settings, "2026-04-01")).toEqual({ from: "2026-04-01", finishedPerWeek: 5, out: 8 });
  });

  test("one pair of hands until more are said, from their date; of one date the later said", () => {
    const settings = settled(
      { of: "hands", from: "2026-04-01", pairs: 2 },
      { of: "hands", from: "2026-04-01", pairs: 3 },
    );
    expect(handsAt(settings, "2026-03-31")).toBe(1);
    expect(handsAt(settings, "2026-04-01")).toBe(3);
  });

  test("hooks of a place, and none counted where they were taken back", () => {
    expect(settled({ of: "place", name: "rack", hooks: 8 }).places.get("rack")).toEqual({ hooks: 8 });
    expect(
      settled({ of: "place", name: "rack", hooks: 8 }, { of: "place", name: "rack", hooks: null }).places
        .size,
    ).toBe(0);
  });

  test("zone and default process are the last said", () => {
    expect(
      settled(
        { of: "zone", name: "Europe/Paris" },
        { of: "zone", name: "Europe/Dublin" },
        { of: "default process", name: "walker" },
      ),
    ).toMatchObject({ zone: "Europe/Dublin", defaultProcess: "walker" });
  });
});
