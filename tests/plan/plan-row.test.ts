import { describe, expect, test } from "vitest";
import { dispatch } from "../../src/plan/dispatch.ts";
import { makeProblem } from "../../src/plan/make-problem.ts";
import { isCurrent, rowOf, settingsOf, warmPlan } from "../../src/plan/plan-row.ts";
import { readShop } from "../../src/plan/plan-shop.ts";
import { prepareDispatch } from "../../src/plan/prepare-dispatch.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";
import { contextAt, newPieceOf } from "./ask-now.ts";

const about = { seq: 3, settings: "evenings", air: 0, seed: 1, rounds: 60 };

/** Three walkers, one of them hanging after its second seal. */
function threeWalkers(): Diary {
  const diary = new Diary(walker);
  diary.tag([1, 2], "Mon 18:00");
  diary.came(3, "second seal", "last Sun 20:00", "Mon 18:00");
  return diary;
}

/** The problem of a moment, and the plan dispatch makes of it. */
function planned(diary: Diary, when: string) {
  const made = makeProblem(readShop(diary.shop(), contextAt(when)), false);
  return { made, plan: dispatch(prepareDispatch(made.problem)) };
}

/** What is begun when, in minutes of the problem: `[task, part, start]`. */
function starts(visits: readonly { task: number; part: string; start: number }[]) {
  return visits.map(({ task, part, start }) => [task, part, start]);
}

describe("a plan as a row", () => {
  test("names each start by tag, step, pass and part, at its moment", () => {
    const { made, plan } = planned(threeWalkers(), "Mon 18:00");
    const row = rowOf(plan, made, about);
    expect(row).toMatchObject(about);
    expect(row.starts).toHaveLength(plan.visits.length);
    const [first] = plan.visits;
    expect(row.starts[0]?.start).toBe(at("Mon 18:00") + (first?.start ?? 0) * 60_000);
    const keys = new Set(row.starts.map(({ tag, step, pass }) => `${tag} ${step} ${pass}`));
    expect(keys.has("1 shape 1")).toBe(true);
    expect(keys.has("3 second seal 1")).toBe(false);
  });

  test("comes back as the same order and starts for the same moment", () => {
    const { made, plan } = planned(threeWalkers(), "Mon 18:00");
    const warm = warmPlan(rowOf(plan, made, about), made);
    expect(starts(warm.visits)).toEqual(starts(plan.visits));
  });

  test("seeds a later moment: what was done is left out, and each start lies as much earlier", () => {
    const diary = threeWalkers();
    const row = (({ made, plan }) => rowOf(plan, made, about))(planned(diary, "Mon 18:00"));
    diary.take(1, "shape", "Mon 18:00");
    diary.hang(1, "shape", "Mon 18:45");
    const { made } = planned(diary, "Mon 18:45");
    const warm = warmPlan(row, made);
    const kept = row.starts.filter(({ tag, step }) => !(tag === 1 && step === "shape"));
    expect(warm.visits.map(({ start }) => start)).toEqual(
      kept.map(({ start }) => Math.round((start - at("Mon 18:45")) / 60_000)),
    );
    for (const { task } of warm.visits) expect(made.problem.tasks[task]?.ended).toBeNull();
  });

  test("counts passes on: once one is hung, the next keeps its start", () => {
    const diary = new Diary(walker);
    const scheme = [
      { colour: "ochre", minutes: 6, flashOff: 5 },
      { colour: "bone", minutes: 6, flashOff: 5 },
    ];
    diary.came(1, "second seal", "last Sun 20:00", "Mon 17:00", scheme);
    const row = (({ made, plan }) => rowOf(plan, made, about))(planned(diary, "Mon 18:00"));
    const passes = (): number[] => row.starts.flatMap(({ step, pass }) => (step === "colours" ? [pass] : []));
    expect(passes()).toEqual([1, 2]);
    diary.take(1, "colours", "Mon 18:10", { colour: "ochre" });
    diary.hang(1, "colours", "Mon 18:16", { colour: "ochre" });
    const { made } = planned(diary, "Mon 18:16");
    const bone = made.pieces[0]?.tasks.find(({ colour }) => colour === "bone")?.task;
    const warm = warmPlan(row, made);
    const second = row.starts.find(({ step, pass }) => step === "colours" && pass === 2);
    expect(warm.visits.find(({ task }) => task === bone)?.start).toBe(
      Math.round(((second?.start ?? 0) - at("Mon 18:16")) / 60_000),
    );
  });

  test("knows pieces that are not tagged yet by their order", () => {
    const diary = threeWalkers();
    const facts = readShop(diary.shop(), contextAt("Mon 18:00", { newPiece: newPieceOf(walker) }));
    const added = [{ definition: walker, due: null, underLimit: false, release: 0 }];
    const made = makeProblem(facts, true, added);
    const plan = dispatch(prepareDispatch(made.problem));
    const row = rowOf(plan, made, about);
    expect(new Set(row.starts.map(({ tag }) => tag))).toEqual(new Set([1, 2, 3, -1, -2]));
    expect(starts(warmPlan(row, made).visits)).toEqual(starts(plan.visits));
  });
});

describe("a row holds", () => {
  const row = { ...about, starts: [], leaving: { until: 0, work: [] } };

  test("until the next act, and while the settings are what they were", () => {
    expect(isCurrent(row, 3, "evenings")).toBe(true);
    expect(isCurrent(row, 4, "evenings")).toBe(false);
    expect(isCurrent(row, 3, "mornings")).toBe(false);
  });

  test("not when hours, hands, hooks, the aim, what is kept apart or the new piece have changed", () => {
    const diary = threeWalkers();
    const settings = (more = {}) => settingsOf(readShop(diary.shop(), contextAt("Mon 18:00", more)));
    const before = settings();
    expect(settings()).toBe(before);
    const changed = [
      settings({ hours: { weekly: [], days: {}, away: [] } }),
      settings({ newPiece: newPieceOf(walker) }),
      settings({ rules: { cautions: {}, keepApart: [] } }),
    ];
    diary.settle({ of: "hands", from: "2026-03-23", pairs: 2 }, "Mon 18:00");
    changed.push(settings());
    diary.settle({ of: "place", name: "rack", hooks: 2 }, "Mon 18:00");
    changed.push(settings());
    const aim = { of: "aim", from: "2026-03-23", finishedPerWeek: 3, out: null } as const;
    diary.settle(aim, "Mon 18:00");
    changed.push(settings());
    expect(new Set([before, ...changed]).size).toBe(1 + changed.length);
  });
});
