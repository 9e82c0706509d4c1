import { describe, expect, test } from "vitest";
import { stepStates } from "../../src/shop/step-state.ts";
import { Diary } from "../fixtures/diary.ts";
import { acrylic, inARow, makeCoat, makeProcess, makeStep, minutes, varnish } from "../fixtures/walker.ts";
import { moment } from "../fixtures/week-time.ts";

const definition = makeProcess(
  "row",
  inARow([
    makeStep("carve", 20),
    makeStep("seal", 5, { coat: "varnish" }),
    makeStep("paint", 5, { coat: "acrylic" }),
  ]),
  [varnish, acrylic],
);

function tagged(): Diary {
  const diary = new Diary(definition);
  diary.tag([1, 2], "Mon 8:00");
  return diary;
}

const names = (diary: Diary, tag = 1) => diary.piece(tag).route.map(({ name }) => name);
const afters = (diary: Diary) => diary.piece(1).route.map(({ after }) => after);

describe("one piece's own route", () => {
  test("a step put in comes after the one named and before all that followed it", () => {
    const diary = tagged();
    diary.route(
      1,
      { do: "put", name: "second seal", like: "seal", after: "seal", coat: null, handsOn: minutes(4) },
      "Mon 9:00",
    );
    expect(names(diary)).toEqual(["carve", "seal", "second seal", "paint"]);
    expect(afters(diary)).toEqual([[], ["carve"], ["seal"], ["second seal"]]);
    expect(diary.piece(1).route[2]).toMatchObject({ coat: "varnish", handsOn: { likely: 4 } });
    // The other piece keeps its process.
    expect(names(diary, 2)).toEqual(["carve", "seal", "paint"]);
  });

  test("what followed a step left out follows what it followed", () => {
    const diary = tagged();
    diary.route(1, { do: "skip", step: "seal" }, "Mon 9:00");
    expect(names(diary)).toEqual(["carve", "paint"]);
    expect(afters(diary)).toEqual([[], ["carve"]]);
  });

  test("leaving out the last step still to do finishes the piece", () => {
    const diary = tagged();
    diary.hang(1, "carve", "Mon 9:00");
    diary.hang(1, "seal", "Mon 9:30");
    const act = diary.route(1, { do: "skip", step: "paint" }, "Mon 10:00");
    expect(diary.piece(1).end).toMatchObject({ how: "finished" });
    diary.undo(act, "Mon 10:01");
    expect(diary.piece(1).end).toBeNull();
  });

  test("a swapped step keeps its name and place and works like the other, with another coat if said", () => {
    const diary = tagged();
    const oil = makeCoat("oil", { feelFirst: true });
    diary.route(1, { do: "swap", step: "paint", like: "seal", coat: oil }, "Mon 9:00");
    expect(names(diary)).toEqual(["carve", "seal", "paint"]);
    expect(diary.piece(1).route[2]).toMatchObject({ name: "paint", coat: "oil", after: ["seal"] });
    expect(diary.piece(1).coats.oil?.feelFirst).toBe(true);
  });

  test("a coat brought in under a name the process has already does not change the steps that use the old one", () => {
    const diary = tagged();
    const thinned = { ...varnish, stages: { "dry-hard": 90 } };
    diary.route(
      1,
      { do: "put", name: "wash", like: "seal", after: "carve", coat: thinned, handsOn: null },
      "Mon 9:00",
    );
    const { route, coats } = diary.piece(1);
    expect(route.find(({ name }) => name === "wash")?.coat).toBe("varnish (wash)");
    expect(route.find(({ name }) => name === "seal")?.coat).toBe("varnish");
    expect(coats.varnish?.stages["dry-hard"]).toBe(720);
    expect(coats["varnish (wash)"]?.stages["dry-hard"]).toBe(90);
  });

  test("a step put in before work that was done is open beside it, and the piece is not finished without it", () => {
    const diary = tagged();
    diary.hang(1, "carve", "Mon 9:00");
    diary.hang(1, "seal", "Mon 9:30");
    diary.route(
      1,
      { do: "put", name: "sand", like: "carve", after: "carve", coat: null, handsOn: null },
      "Mon 10:00",
    );
    diary.hang(1, "paint", "Mon 18:00");
    expect(diary.piece(1).end).toBeNull();
    const states = stepStates(diary.piece(1), moment("Mon 18:01"));
    expect([...states].map(([name, { is }]) => `${name} ${is}`)).toEqual([
      "carve done",
      "sand open",
      "seal done",
      "paint done",
    ]);
  });

  test.each([
    [{ do: "skip", step: "polish" }, 'its route has no step "polish"'],
    [
      { do: "put", name: "seal", like: "seal", after: "seal", coat: null, handsOn: null },
      'it has a step "seal" already',
    ],
    [
      { do: "put", name: "x", like: "polish", after: "seal", coat: null, handsOn: null },
      'there is no step "polish" to work like',
    ],
    [{ do: "swap", step: "carve", like: "seal", coat: null }, '"carve" is begun'],
  ] as const)("%o does not fit: %s", (change, why) => {
    const diary = tagged();
    diary.take(1, "carve", "Mon 9:00");
    const before = diary.piece(1).route;
    const seq = diary.route(1, change, "Mon 9:05");
    expect(diary.shop().setAside).toEqual([{ seq, why: `${seq} (routed of 1) fits nothing: ${why}` }]);
    expect(diary.piece(1).route).toEqual(before);
  });
});
