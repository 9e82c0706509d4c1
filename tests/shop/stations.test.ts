import { describe, expect, test } from "vitest";
import { setUpState } from "../../src/shop/set-up-state.ts";
import { setUpWords } from "../../src/shop/set-up-words.ts";
import { Diary } from "../fixtures/diary.ts";
import { loadColour, walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";

const heat = { way: "heat", minutes: 45 } as const;
const cup = { way: "mix", minutes: 30, serves: 4 } as const;

function standing(diary: Diary, station: string) {
  const setUp = diary.shop().stations.get(station)?.setUp;
  if (setUp === null || setUp === undefined) throw new Error(`nothing stands at the ${station}`);
  return setUp;
}

describe("a pot that keeps 45 min from last use", () => {
  const diary = new Diary(walker);
  diary.came(3, "drill", "Mon 18:50", "Mon 18:50");
  diary.ready("lead pot", "melt lead", "Mon 19:50", {
    begun: at("Mon 19:50"),
    ready: at("Mon 20:10"),
    keeps: heat,
  });

  test("is getting ready till 20:10, then keeps till 20:55", () => {
    expect(setUpState(standing(diary, "lead pot"), at("Mon 20:09"))).toEqual({
      is: "getting ready",
      until: at("Mon 20:10"),
    });
    expect(setUpState(standing(diary, "lead pot"), at("Mon 20:10"))).toEqual({
      is: "ready",
      until: at("Mon 20:55"),
    });
  });

  test("said to be ready at 20:10 is still the pot lit at 19:50", () => {
    const said = new Diary(walker);
    said.events.push(...diary.events);
    said.ready("lead pot", "melt lead", "Mon 20:12", { keeps: heat });
    expect(standing(said, "lead pot")).toMatchObject({ begun: at("Mon 19:50"), ready: at("Mon 20:12") });
    expect(said.shop().stations.get("lead pot")?.clearedAt).toBeNull();
  });

  test("kept too long at 20:55 and lit again is a new melt: the one before ended at 20:55", () => {
    const again = new Diary(walker);
    again.events.push(...diary.events);
    again.ready("lead pot", "melt lead", "Mon 21:30", { keeps: heat });
    expect(again.shop().stations.get("lead pot")).toMatchObject({
      clearedAt: at("Mon 20:55"),
      setUp: { begun: null, ready: at("Mon 21:30") },
    });
  });

  test("used till 20:18 keeps till 21:03, and after that was kept too long", () => {
    diary.take(3, "pour the ballast", "Mon 20:12");
    diary.hang(3, "pour the ballast", "Mon 20:18");
    expect(standing(diary, "lead pot")).toMatchObject({ lastUsed: at("Mon 20:18"), served: 1 });
    expect(setUpState(standing(diary, "lead pot"), at("Mon 21:02"))).toEqual({
      is: "ready",
      until: at("Mon 21:03"),
    });
    expect(setUpState(standing(diary, "lead pot"), at("Mon 21:03"))).toEqual({
      is: "kept too long",
      until: at("Mon 21:03"),
    });
  });

  test("put away it is gone, and putting away nothing fits nothing", () => {
    diary.putAway("lead pot", "Mon 20:55");
    expect(diary.shop().stations.get("lead pot")).toMatchObject({
      setUp: null,
      lastUsed: at("Mon 20:18"),
      clearedAt: at("Mon 20:55"),
    });
    const seq = diary.putAway("lead pot", "Mon 20:56");
    expect(diary.shop().setAside).toEqual([
      { seq, why: `${seq} (put away) fits nothing: nothing stood at the lead pot to put away` },
    ]);
    expect(diary.shop().stations.get("lead pot")?.lastSeq).toBe(seq);
  });
});

describe("a cup that keeps 30 min from mixing and serves 4", () => {
  function mixed(): Diary {
    const diary = new Diary(walker);
    for (const tag of [1, 4, 5, 6]) diary.came(tag, "detail", "Wed 18:00", "Thu 18:00");
    diary.ready("bench", "mix resin", "Thu 18:50", { keeps: cup });
    return diary;
  }

  test("is not kept longer by use: mixed 18:50, three served 19:00, till 19:20", () => {
    const diary = mixed();
    diary.hang([1, 4, 5], "last clear", "Thu 19:00");
    expect(standing(diary, "bench").served).toBe(3);
    expect(setUpState(standing(diary, "bench"), at("Thu 19:19"))).toEqual({
      is: "ready",
      until: at("Thu 19:20"),
    });
    expect(setUpState(standing(diary, "bench"), at("Thu 19:20"))).toMatchObject({ is: "kept too long" });
  });

  test("the fourth is the last", () => {
    const diary = mixed();
    diary.hang([1, 4, 5], "last clear", "Thu 19:00");
    diary.hang(6, "last clear", "Thu 19:05");
    expect(setUpState(standing(diary, "bench"), at("Thu 19:06"))).toEqual({
      is: "all served",
      until: at("Thu 19:05"),
    });
  });

  test("mixed again it serves four more", () => {
    const diary = mixed();
    diary.hang([1, 4, 5, 6], "last clear", "Thu 19:00");
    diary.ready("bench", "mix resin", "Thu 19:10", { keeps: cup });
    expect(setUpState(standing(diary, "bench"), at("Thu 19:11"))).toEqual({
      is: "ready",
      until: at("Thu 19:40"),
    });
  });

  test("work at the same station that does not use it leaves it alone", () => {
    const diary = mixed();
    diary.tag(7, "Thu 18:00");
    diary.hang(7, "shape", "Thu 18:58");
    expect(standing(diary, "bench")).toMatchObject({ served: 0, lastUsed: null });
    expect(diary.shop().stations.get("bench")?.lastUsed).toBe(at("Thu 18:58"));
  });
});

describe("a loaded airbrush", () => {
  test("keeps until another load, and only its own colour uses it", () => {
    const diary = new Diary(walker);
    const scheme = ["ochre", "moss"].map((colour) => ({ colour, minutes: 8, flashOff: 5 }));
    diary.came(1, "second seal", "Mon 12:00", "Mon 18:00", scheme);
    diary.ready("spray corner", "load ochre", "Mon 18:10");
    diary.hang(1, "colours", "Mon 18:20", { colour: "ochre" });
    diary.hang(1, "colours", "Mon 18:30", { colour: "moss" });
    expect(standing(diary, "spray corner")).toMatchObject({ lastUsed: at("Mon 18:20"), served: 1 });
    expect(setUpState(standing(diary, "spray corner"), at("Fri 18:00"))).toEqual({
      is: "ready",
      until: null,
    });
    diary.ready("spray corner", "load moss", "Mon 18:40");
    expect(diary.shop().stations.get("spray corner")).toMatchObject({
      setUp: { what: "load moss", served: 0 },
      clearedAt: at("Mon 18:40"),
    });
  });

  test("is called by its colour, and by none where none is said", () => {
    expect(setUpWords(loadColour, "ochre")).toBe("load ochre");
    expect(setUpWords(loadColour, null)).toBe("load colour");
  });
});

test("stations do not know of each other, and an act that was undone still counts as the newest there", () => {
  const diary = new Diary(walker);
  const act = diary.ready("lead pot", "melt lead", "Mon 18:00", { keeps: heat });
  const undo = diary.undo(act, "Mon 18:01");
  expect(diary.shop().stations.get("lead pot")).toMatchObject({ setUp: null, lastSeq: undo });
  expect(diary.shop().stations.has("bench")).toBe(false);
});
