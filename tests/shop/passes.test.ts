import { describe, expect, test } from "vitest";
import { coloursLeft, nextPass, passesLeft } from "../../src/shop/passes.ts";
import { stepState } from "../../src/shop/step-state.ts";
import { Diary } from "../fixtures/diary.ts";
import { everyDay, inAir } from "../fixtures/shop-in-air.ts";
import { makeProcess, makeStep, varnish, walker } from "../fixtures/walker.ts";
import { at, moment } from "../fixtures/week-time.ts";

const ochre = { colour: "ochre", minutes: 10, flashOff: 5 };
const moss = { colour: "moss", minutes: 8, flashOff: null };
const colours = walker.steps.find(({ name }) => name === "colours") ?? makeStep("none", 0);

/** A walker sealed twice, ready to be painted in this scheme. */
function sealed(scheme: readonly { colour: string; minutes: number; flashOff: number | null }[]): Diary {
  const diary = new Diary(walker);
  diary.came(1, "second seal", "Mon 12:00", "Mon 18:00", scheme);
  return diary;
}

describe("a scheme of two colours", () => {
  test("is two passes, in the scheme's order, with a flash-off of 5 min between", () => {
    const diary = sealed([ochre, moss]);
    expect(passesLeft(diary.piece(1), colours)).toBe(2);
    expect(nextPass(diary.piece(1), colours)).toEqual(ochre);
    diary.hang(1, "colours", "Mon 18:20", { colour: "ochre" });
    expect(nextPass(diary.piece(1), colours)).toEqual(moss);
    expect(stepState(diary.piece(1), "colours", moment("Mon 18:24"))).toMatchObject({
      is: "drying",
      opens: at("Mon 18:25"),
      because: "window",
      step: "colours",
    });
    expect(stepState(diary.piece(1), "colours", moment("Mon 18:25"))).toMatchObject({ is: "open" });
    expect(stepState(diary.piece(1), "first clear", moment("Mon 18:25"))).toEqual({
      is: "blocked",
      by: ["colours"],
    });
  });

  test("where a pass names no flash-off the coat's own 5 min count, and the one given on hanging before all", () => {
    const diary = sealed([moss, ochre]);
    diary.hang(1, "colours", "Mon 18:20", { colour: "moss" });
    expect(stepState(diary.piece(1), "colours", moment("Mon 18:20"))).toMatchObject({
      opens: at("Mon 18:25"),
    });
    const given = sealed([moss, ochre]);
    given.hang(1, "colours", "Mon 18:20", { colour: "moss", flashOff: 9 });
    expect(stepState(given.piece(1), "colours", moment("Mon 18:20"))).toMatchObject({
      opens: at("Mon 18:29"),
    });
  });

  test("in air that dries half as fast the flash-off lasts twice as long, and in warm dry air less", () => {
    // Water leaves by how much more vapour the air could take up: at 20 °C, 75 % half of what it is at 50 %, 20 % 1.6 times.
    for (const [humidity, opens] of [
      [75, "Mon 18:30"],
      [20, "Mon 18:24"],
    ] as const) {
      const diary = sealed([ochre, moss]);
      diary.hang(1, "colours", "Mon 18:20", { colour: "ochre" });
      const piece = inAir(
        diary.shop(),
        everyDay(() => 20, humidity),
      ).pieces.get(1);
      if (piece === undefined) throw new Error("1 is in the shop");
      expect(stepState(piece, "colours", moment("Mon 18:21"))).toMatchObject({ opens: at(opens) });
    }
  });

  test("sprayed in the other order is kept as sprayed, with the minutes it took", () => {
    const diary = sealed([ochre, moss]);
    diary.take(1, "colours", "Mon 18:10", { colour: "moss" });
    diary.hang(1, "colours", "Mon 18:16", { colour: "moss", flashOff: 7 });
    expect(diary.piece(1).scheme).toEqual([{ colour: "moss", minutes: 6, flashOff: 7 }, ochre]);
    expect(coloursLeft(diary.piece(1), colours)).toEqual([ochre]);
  });

  test("keeps the minutes planned where those it took are a guess or not known", () => {
    const diary = sealed([ochre, moss]);
    diary.hang(1, "colours", "Mon 18:16", { colour: "ochre" });
    diary.take(1, "colours", "Mon 18:30", { colour: "moss" });
    diary.hang(1, "colours", "Mon 18:37", { colour: "moss", guessed: true });
    expect(diary.piece(1).scheme.map(({ minutes }) => minutes)).toEqual([10, 8]);
  });

  test("the same colour twice is two passes", () => {
    const diary = sealed([ochre, { ...ochre }]);
    diary.hang(1, "colours", "Mon 18:16", { colour: "ochre" });
    expect(passesLeft(diary.piece(1), colours)).toBe(1);
  });
});

describe("more and fewer colours than planned", () => {
  test("no colour in the scheme is one pass, its colour not said", () => {
    const diary = sealed([]);
    expect(passesLeft(diary.piece(1), colours)).toBe(1);
    diary.hang(1, "colours", "Mon 18:16");
    expect(stepState(diary.piece(1), "colours", moment("Mon 18:17"))).toMatchObject({ is: "done" });
    expect(diary.piece(1).scheme).toEqual([]);
  });

  test("a colour the scheme has not is one more pass of a step that was done", () => {
    const diary = sealed([ochre]);
    diary.hang(1, "colours", "Mon 18:16", { colour: "ochre" });
    diary.take(1, "colours", "Mon 18:25", { colour: "white", another: true });
    expect(stepState(diary.piece(1), "colours", moment("Mon 18:26"))).toMatchObject({ is: "in hand" });
    expect(stepState(diary.piece(1), "first clear", moment("Mon 18:26"))).toEqual({
      is: "blocked",
      by: ["colours"],
    });
    diary.hang(1, "colours", "Mon 18:29", { colour: "white", another: true });
    expect(diary.piece(1).scheme.map(({ colour }) => colour)).toEqual(["ochre", "white"]);
    expect(
      diary
        .piece(1)
        .work.get("colours")
        ?.hangs.map(({ pass }) => pass),
    ).toEqual([1, 2]);
  });

  test("a colour struck from the scheme half-way ends the step; one added when it is done does not reopen it", () => {
    const diary = sealed([ochre, moss]);
    diary.hang(1, "colours", "Mon 18:16", { colour: "ochre" });
    diary.say(1, { kind: "changed", scheme: [ochre] }, "Mon 18:20");
    expect(stepState(diary.piece(1), "colours", moment("Mon 18:21"))).toMatchObject({ is: "done" });
    diary.say(1, { kind: "changed", scheme: [ochre, moss] }, "Mon 18:30");
    expect(stepState(diary.piece(1), "colours", moment("Mon 18:31"))).toMatchObject({ is: "done" });
  });

  test("after a mend all colours are to do again, and pass numbers go on rising", () => {
    const diary = sealed([ochre, moss]);
    diary.hang(1, "colours", "Mon 18:16", { colour: "ochre" });
    diary.hang(1, "colours", "Mon 18:26", { colour: "moss" });
    diary.mend(1, "wipe the run", 5, "colours", "Mon 18:40");
    expect(passesLeft(diary.piece(1), colours)).toBe(2);
    diary.hang(1, "colours", "Mon 18:50", { colour: "ochre" });
    expect(diary.piece(1).work.get("colours")).toMatchObject({ voided: 2, completed: false });
    expect(
      diary
        .piece(1)
        .work.get("colours")
        ?.hangs.map(({ pass }) => pass),
    ).toEqual([1, 2, 3]);
    expect(diary.piece(1).scheme.map(({ colour }) => colour)).toEqual(["ochre", "moss"]);
  });
});

test("two passes of a varnish that shuts: left overnight past its window the second asks for the scuff", () => {
  const step = makeStep("spray", 8, { passes: "scheme", coat: "varnish" });
  const diary = new Diary(makeProcess("sprayed", [step], [{ ...varnish, flashOff: 20 }]));
  diary.tag(1, "Mon 18:00", {
    scheme: [ochre, { ...moss, flashOff: null }].map((pass) => ({ ...pass, flashOff: null })),
  });
  diary.hang(1, "spray", "Mon 18:10", { colour: "ochre" });
  const state = (when: string) => stepState(diary.piece(1), "spray", moment(when));
  // The flash-off of 20 min opens it, not the 4 h of the window; the window's 24 h shut it.
  expect(state("Mon 18:29")).toMatchObject({ is: "drying", opens: at("Mon 18:30"), shuts: at("Tue 18:10") });
  expect(state("Mon 18:30")).toMatchObject({ is: "open", shuts: at("Tue 18:10") });
  expect(state("Tue 18:10")).toMatchObject({ is: "shut", preparation: { do: "scuff" } });
});
