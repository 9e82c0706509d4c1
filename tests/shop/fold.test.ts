import { describe, expect, test } from "vitest";
import { foldShop } from "../../src/shop/fold.ts";
import { hookNeededUntil } from "../../src/shop/hook.ts";
import { Diary } from "../fixtures/diary.ts";
import { inARow, makeProcess, makeStep, varnish, walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";

describe("events that fit nothing", () => {
  test("are set aside with a sentence beside those the journal could not read, and the rest is folded", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00");
    diary.hang(9, "shape", "Mon 18:01");
    diary.hang(1, "shape", "Mon 18:40");
    const unread = { seq: 99, tag: 1, station: null, why: "99 is of an unknown kind" };
    const shop = foldShop({ ...diary.reading(), nextTag: 2, setAside: [unread] });
    expect(shop.setAside).toEqual([unread, { seq: 2, why: "2 (hung of 9) fits nothing: there is no 9" }]);
    expect(shop.pieces.get(1)?.work.get("shape")?.completed).toBe(true);
    // An act of the piece leans on the newest row of it, read or not.
    expect(shop.pieces.get(1)?.lastSeq).toBe(99);
  });

  test("are not made of a late event of a piece that this reading leaves out", () => {
    const diary = new Diary(walker);
    diary.tag([1, 2], "Mon 18:00");
    diary.say(1, { kind: "noted", text: "the first" }, "Mon 18:05");
    const shop = foldShop({
      ...diary.reading(),
      events: diary.events.filter((e) => e.tag === 2 || e.kind === "noted"),
    });
    expect(shop.setAside).toEqual([]);
    expect([...shop.pieces.keys()]).toEqual([2]);
    // The act stands all the same, so that it can be undone.
    expect(shop.acts.map(({ kinds }) => kinds)).toEqual([["tagged"], ["noted"]]);
  });

  test("of a process that is not kept, and a step it has not, say so", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00", { process: "lost" });
    diary.came(2, "polish", "Mon 12:00", "Mon 18:00");
    expect(diary.shop().setAside.map(({ why }) => why)).toEqual([
      "1 (tagged of 1) fits nothing: its process is not in the journal",
      '2 (tagged of 2) fits nothing: its process has no step "polish" to hang from',
    ]);
  });

  test("without a tag or a station say what they miss", () => {
    const diary = new Diary(walker);
    diary.act("Mon 18:00", [{ tag: null, body: { kind: "scrapped", why: "?" } }]);
    diary.act("Mon 18:01", [{ tag: null, body: { kind: "put away" } }]);
    expect(diary.shop().setAside.map(({ why }) => why)).toEqual([
      "1 (scrapped) fits nothing: it names no tag",
      "2 (put away) fits nothing: it names no station",
    ]);
  });

  test("a step hung before those it waits for, with an answer nobody knows, or twice over", () => {
    const diary = new Diary(walker);
    diary.came(1, "hangers", "Mon 12:00", "Mon 12:00");
    diary.hang(1, "water test", "Mon 18:00", { result: "sinks" });
    diary.came(2, "seal", "Mon 12:00", "Mon 12:00");
    diary.hang(2, "detail", "Mon 18:00");
    diary.hang(2, "seal", "Mon 18:00");
    expect(diary.shop().setAside.map(({ why }) => why.split(": ")[1])).toEqual([
      '"water test" has no answer "sinks"',
      '"first clear" must come before "detail"',
      '"seal" is done',
    ]);
  });
});

describe("facts of a piece", () => {
  test("what is changed is changed, and what is not said stays", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00", { due: "2026-04-03", price: 2800, for: "Ann" });
    diary.say(1, { kind: "changed", price: 3000, weight: 3 }, "Fri 18:00");
    expect(diary.piece(1)).toMatchObject({
      due: "2026-04-03",
      price: 3000,
      for: "Ann",
      weight: 3,
      name: "lure 1",
    });
    diary.say(1, { kind: "changed", due: null, for: null, name: "gift" }, "Fri 18:01");
    expect(diary.piece(1)).toMatchObject({ due: null, for: null, name: "gift", price: 3000 });
  });

  test("of several measures of one thing the newest stands; notes are kept in order", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00");
    diary.say(1, { kind: "measured", what: "weight", value: 30, unit: "g" }, "Mon 18:01");
    diary.say(1, { kind: "measured", what: "weight", value: 31.5, unit: "g" }, "Mon 18:02");
    diary.say(1, { kind: "noted", text: "a" }, "Mon 18:03");
    diary.say(1, { kind: "noted", text: "b" }, "Mon 18:04");
    expect(diary.piece(1).measured.get("weight")).toEqual({ value: 31.5, unit: "g", at: at("Mon 18:02") });
    expect(diary.piece(1).notes.map(({ text }) => text)).toEqual(["a", "b"]);
  });

  test("scrapped or gone it is on no hook and in nobody's hand", () => {
    const diary = new Diary(walker);
    diary.came(1, "seal", "Mon 12:00", "Mon 18:00");
    diary.take(1, "second seal", "Mon 18:05");
    diary.say(1, { kind: "scrapped", why: "split" }, "Mon 18:10");
    expect(diary.piece(1)).toMatchObject({
      hand: null,
      place: null,
      end: { how: "scrapped", at: at("Mon 18:10"), finishedAt: null, why: "split" },
    });
  });

  test("cautions ticked are kept oldest first, and acts name who, when, what and where", () => {
    const diary = new Diary(walker);
    diary.tick("epoxy", "Mon 18:00");
    diary.tag([1, 2], "Mon 18:01");
    diary.take([1, 2], "shape", "Mon 18:02");
    const { ticks, acts } = diary.shop();
    expect(ticks).toEqual([{ caution: "epoxy", at: at("Mon 18:00") }]);
    expect(acts.at(-1)).toMatchObject({
      act: 4,
      at: at("Mon 18:02"),
      by: "maker",
      tags: [1, 2],
      stations: ["bench"],
      kinds: ["taken"],
    });
  });
});

describe("how long a piece needs its hook", () => {
  const steps = inARow([
    makeStep("plain", 5, { place: "rack", wait: 30 }),
    makeStep("timed", 5, { place: "rack", until: { minutes: 180 } }),
    makeStep("coat", 5, { place: "rack", coat: "varnish" }),
    makeStep("tack", 5, { place: "rack", coat: "varnish", until: { stage: "tack-free" } }),
  ]);
  const diary = new Diary(makeProcess("hung", steps, [varnish]));
  diary.tag(1, "Mon 9:00");
  const until = () => hookNeededUntil(diary.piece(1), at("Mon 10:00"));

  test("as long as the step's wait, for a time, until dry-hard, or until the stage it names", () => {
    expect(until()).toBeNull();
    diary.hang(1, "plain", "Mon 10:00");
    expect(until()).toBe(at("Mon 10:30"));
    diary.hang(1, "timed", "Mon 11:00");
    expect(until()).toBe(at("Mon 14:00"));
    diary.hang(1, "coat", "Mon 12:00");
    expect(until()).toBe(at("Tue 0:00"));
    diary.hang(1, "tack", "Mon 17:00");
    expect(until()).toBe(at("Mon 19:00"));
  });
});
