import { expect, test } from "vitest";
import { MINUTE } from "../../src/time/instant.ts";
import { at } from "../fixtures/week-time.ts";
import { Bench, refusalOf, told } from "./bench.ts";

/** The made-up week of 23 March 2026 in Dublin, as far as acts reach: what is allowed, refused and written. */
test("a week at the bench goes as told, each no with its reason", () => {
  const bench = new Bench("Mon 18:00");

  // Two walkers hang already, sealed once: one since yesterday 20:00, one since 12:30.
  bench.tag(1, { hung: { step: "seal", since: at("last Sun 20:00") } });
  bench.tag(1, { hung: { step: "seal", since: at("Mon 12:30") } });
  expect(bench.at("Mon 18:01").state(1, "second seal")).toMatchObject({ is: "open", shuts: at("Mon 20:00") });
  // Opened 12:30 + 4 h, shuts a day after 12:30.
  expect(bench.state(2, "second seal")).toMatchObject({ since: at("Mon 16:30"), shuts: at("Tue 12:30") });

  bench.at("Mon 18:02").tag();
  expect(told(bench.take(3))).toEqual([
    "ticked molten lead",
    "ticked solvent vapour",
    "ticked epoxy",
    "ticked wood and foam dust",
    "taken 3 shape",
  ]);
  bench.reads = false;
  bench.at("Mon 18:40").hang(3);
  bench.take(3);
  bench.at("Mon 18:48").hang(3);

  expect(told(bench.at("Mon 18:50").take([1, 2]))).toEqual(["taken 1 second seal", "taken 2 second seal"]);
  bench.at("Mon 19:04").hang([1, 2]);
  // 14 min for two: 7 min each.
  expect(bench.piece(1).work.get("second seal")?.hangs[0]?.minutes).toBe(7);
  expect(bench.state(1, "colours")).toMatchObject({ opens: at("Mon 23:04"), shuts: at("Tue 19:04") });

  // The vapour of 1 and 2 lasts 40 min from 19:04, their wet coats 45 min.
  const lit = refusalOf(bench.at("Mon 19:05").ready("lead pot", { beginning: true }));
  expect(lit).toMatchObject({ code: "held", until: at("Mon 19:44"), holds: [{ tags: [1, 2] }] });
  bench.tag();
  expect(refusalOf(bench.take(4, { step: "shape" }))).toMatchObject({ code: "held", until: at("Mon 19:49") });
  bench.undo();

  // The lead is read about before the pot is lit at 19:50; it takes 20 min.
  bench.at("Mon 19:50");
  bench.measure(3, 8);
  bench.tick("molten lead");
  expect(told(bench.ready("lead pot", { beginning: true }))).toEqual(["readied lead pot melt lead"]);
  expect(bench.shop.stations.get("lead pot")?.setUp?.ready).toBe(at("Mon 20:10"));
  expect(told(bench.at("Mon 20:12").take(3))).toEqual(["taken 3 pour the ballast"]);
  expect(told(bench.at("Mon 20:18").hang(3))).toEqual(["hung 3 pour the ballast"]);
  expect(bench.shop.stations.get("lead pot")?.setUp).toMatchObject({ lastUsed: at("Mon 20:18"), served: 1 });
  expect(told(bench.at("Mon 20:55").putAway("lead pot"))).toEqual(["put away lead pot"]);
  expect(refusalOf(bench.putAway("lead pot"))).toMatchObject({ code: "nothing stands" });

  // Ochre as planned, then white, which no scheme had: another pass.
  bench.at("Tue 18:10").reads = true;
  bench.change(1, { scheme: [{ colour: "ochre", minutes: null, flashOff: 5 }] });
  expect(told(bench.at("Tue 18:15").take(1))).toContain("readied spray corner load ochre");
  bench.at("Tue 18:25").hang(1);
  const white = { colour: "white", step: "colours" };
  expect(refusalOf(bench.at("Tue 18:28").take(1, white))).toMatchObject({
    code: "too early",
    until: at("Tue 18:30"),
  });
  expect(told(bench.at("Tue 18:30").take(1, white))).toContain("readied spray corner load white");
  bench.at("Tue 18:36").hang(1, { flashOff: 10 });
  expect(bench.piece(1).scheme).toEqual([
    { colour: "ochre", minutes: 10, flashOff: 5 },
    { colour: "white", minutes: 6, flashOff: 10 },
  ]);

  // 3 is sealed; the sealing of 2 shut at 19:04, and from then on it asks for a scuff.
  bench.at("Tue 19:20").take(3);
  bench.at("Tue 19:26").hang(3);
  expect(bench.state(2, "colours")).toMatchObject({ is: "shut", since: at("Tue 19:04") });

  // First clear on 1, and the maker forgets to say hung.
  bench.at("Tue 20:30").take(1);
  bench.at("Wed 18:00");
  expect(bench.state(1, "first clear")).toMatchObject({ is: "in hand", forgotten: true });
  bench.measure(3, 8);
  expect(refusalOf(bench.take(2))).toMatchObject({
    code: "other in hand",
    tags: [1],
    since: at("Tue 20:30"),
  });
  const usual = bench.hang(1, { asUsual: true });
  // Taken 20:30 + 8 min.
  expect(usual).toMatchObject({ events: [{ kind: "hung", at: at("Tue 20:38"), guessed: true }] });
  expect(bench.state(1, "detail")).toMatchObject({ is: "open", since: at("Wed 08:38") });
  bench.amend(1, "Tue 20:45");
  expect(bench.state(1, "detail")).toMatchObject({
    is: "open",
    since: at("Wed 08:45"),
    shuts: at("Wed 20:45"),
  });

  // 2 is scuffed while nothing in the room is wet, then painted in a colour of its own.
  expect(told(bench.at("Wed 18:02").take(2))).toContain("taken 2 colours (preparation)");
  bench.at("Wed 18:07").hang(2);
  expect(bench.state(2, "colours").is).toBe("open");

  // A touch says tacky: not by the clock any more, until one says hard.
  bench.at("Wed 18:10").touch(1, "tacky");
  expect(refusalOf(bench.take(1))).toMatchObject({ code: "too early", until: null });

  // The seal of 3 has a run: levelled, sealed again, hung 19:16.
  expect(told(bench.at("Wed 19:00").mend(3, "seal"))).toEqual(["mended 3"]);
  expect(bench.state(3, "seal").is).toBe("open");
  expect(bench.state(3, "second seal")).toMatchObject({ is: "blocked", by: ["seal"] });
  bench.at("Wed 19:10").take(3);
  bench.at("Wed 19:16").hang(3);
  expect(bench.state(3, "second seal")).toMatchObject({ opens: at("Wed 23:16"), shuts: at("Thu 19:16") });

  bench.at("Wed 20:00").touch(1, "hard");
  expect(told(bench.take(1))).toContain("taken 1 detail");
  bench.at("Wed 20:15").hang(1);

  // Two old walkers come back: one cup for three, 24 min for all.
  bench.at("Thu 18:30").tag(2, { hung: { step: "detail", since: at("last Sun 12:00") } });
  expect(told(bench.at("Thu 18:36").take([1, 5, 6]))).toEqual(
    expect.arrayContaining(["readied bench mix resin", "taken 5 last clear"]),
  );
  bench.at("Thu 19:00").hang([1, 5, 6]);
  expect(bench.shop.stations.get("bench")?.setUp).toMatchObject({ served: 3 });
  expect(told(bench.at("Thu 19:05").take(3))).toContain("taken 3 second seal");
  bench.at("Thu 19:11").hang(3);

  // Each one sentence, nothing written.
  bench.at("Fri 19:10");
  const written = bench.events.length;
  expect(refusalOf(bench.hang(9))).toMatchObject({
    code: "no such tag",
    tag: 9,
    exit: 2,
    known: [1, 2, 3, 5, 6],
  });
  expect(refusalOf(bench.hang(5, { at: bench.clock - 2 * 24 * 60 * MINUTE }))).toMatchObject({
    code: "before it was tagged",
    taggedAt: at("Thu 18:30"),
  });
  expect(bench.events.length).toBe(written);
  expect(told(bench.take(3))).toContain("taken 3 colours");
  expect(refusalOf(bench.take(3))).toMatchObject({
    code: "already in hand",
    since: at("Fri 19:10"),
    exit: 3,
  });
  bench.at("Fri 19:20").hang(3);

  // 5 fails the water test and goes on from the hangers; it passes at the second and is finished.
  bench.at("Sat 14:00").take([5, 6]);
  bench.at("Sat 14:20").hang([5, 6]);
  expect(told(bench.at("Sat 15:00").hang(5, { result: "tune" }))).toEqual(["hung 5 water test"]);
  expect(bench.state(5, "hangers").is).toBe("open");
  expect(refusalOf(bench.hang(6, { result: "floats" }))).toMatchObject({
    answers: ["passes", "tune"],
    exit: 2,
  });
  bench.hang(6, { result: "passes" });
  expect(bench.piece(6).end).toMatchObject({ how: "finished", at: at("Sat 15:00") });
  expect(refusalOf(bench.take(6))).toMatchObject({ code: "ended", how: "finished" });

  // A hanger tears out: the finished piece reopens.
  bench.at("Sat 15:30").mend(6, "hangers", { what: "glue", minutes: 10 });
  expect(bench.piece(6).end).toBeNull();
  bench.at("Sat 15:40").hang(6);
  bench.at("Sat 15:50").hang(6, { result: "pass" });
  expect(bench.piece(6).end).toMatchObject({ at: at("Sat 15:50") });

  // Three notes by mistake, undone newest first.
  bench.at("Sat 15:55");
  const before = bench.piece(6);
  for (const text of ["one", "two", "three"]) bench.note(6, text);
  for (let count = 0; count < 3; count += 1) expect(told(bench.undo())).toEqual(["undone 6"]);
  expect(bench.piece(6)).toEqual({ ...before, lastSeq: bench.piece(6).lastSeq });

  expect(bench.shop.setAside).toEqual([]);
});
