import { expect, test } from "vitest";
import { Diary } from "../fixtures/diary.ts";
import { makeProcess, makeStep, varnish } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";
import { askNow, saidRows } from "./ask-now.ts";

/** Sealed on one branch, wired on the other. */
const wired = makeProcess(
  "wired",
  [
    makeStep("cut", 10),
    makeStep("seal", 6, { after: ["cut"], coat: "varnish", place: "rack" }),
    makeStep("second seal", 6, { after: ["seal"], coat: "varnish", place: "rack" }),
    makeStep("wire", 10, { after: ["cut"], mayStop: true, station: "vice" }),
  ],
  [varnish],
);

function sealed(): Diary {
  const diary = new Diary(wired);
  diary.tag(1, "Mon 18:00");
  diary.hang(1, "cut", "Mon 18:10");
  diary.take(1, "seal", "Mon 18:10");
  diary.hang(1, "seal", "Mon 18:16");
  return diary;
}

test("a piece with other bench work open still tells when its coat opens and shuts", () => {
  const now = askNow(sealed(), "Mon 18:20");
  expect(saidRows(now.work)).toEqual(["1 wire"]);
  // Varnish opens after 4 h and shuts after 24 h.
  expect(now.waiting).toMatchObject([
    { tag: 1, step: "second seal", state: "drying", opens: at("Mon 22:16"), shuts: at("Tue 18:16") },
  ]);
});

test("the same while that work lies half-done; while it is in hand that is told", () => {
  const diary = sealed();
  diary.take(1, "wire", "Mon 18:20");
  expect(askNow(diary, "Mon 18:21").waiting).toMatchObject([{ step: "wire", state: "in hand" }]);
  diary.leave(1, "wire", "Mon 18:25");
  expect(askNow(diary, "Mon 18:26").waiting).toMatchObject([{ step: "second seal", state: "drying" }]);
});

test("a window that shuts is told before work that may be begun at any time", () => {
  expect(askNow(sealed(), "Mon 22:30").waiting).toMatchObject([
    { step: "second seal", state: "open", shuts: at("Tue 18:16") },
  ]);
});

test("while a coat is laid the one beneath tells no more when the piece is hard", () => {
  const diary = sealed();
  expect(askNow(diary, "Mon 22:30").waiting).toMatchObject([{ hard: at("Tue 06:16") }]);
  diary.take(1, "second seal", "Mon 22:31");
  expect(askNow(diary, "Mon 22:32").waiting).toMatchObject([{ state: "in hand", hard: null }]);
});
