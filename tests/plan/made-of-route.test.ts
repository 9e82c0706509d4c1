import { expect, test } from "vitest";
import { makeProblem } from "../../src/plan/make-problem.ts";
import { readShop } from "../../src/plan/plan-shop.ts";
import { Diary } from "../fixtures/diary.ts";
import { resin, walker } from "../fixtures/walker.ts";
import { contextAt } from "./ask-now.ts";

/** The tasks of the shop's pieces by tag, with what they wait for by steps and what they stand for. */
function tasksByTag(diary: Diary): Map<number | null, unknown> {
  const { problem, pieces } = makeProblem(readShop(diary.shop(), contextAt("Mon 18:00")), false);
  const stepOf = new Map(pieces.flatMap(({ tasks }) => tasks.map(({ task, step }) => [task, step])));
  return new Map(
    pieces.map(({ tag, tasks }) => [
      tag,
      tasks.map(({ task, facts: _, ...words }) => {
        const { piece, waits, setUp, station, ...rest } = problem.tasks[task] ?? { waits: [] };
        return {
          ...words,
          ...rest,
          waits: waits.map(({ on, ...wait }) => ({ on: stepOf.get(on), ...wait })),
        };
      }),
    ]),
  );
}

test("a piece has the tasks it would have alone, whatever way others of its process go", () => {
  const scheme = [{ colour: "ochre", minutes: 12, flashOff: 5 }];
  const ways: readonly ((diary: Diary, tag: number) => void)[] = [
    (diary, tag) => diary.tag(tag, "Mon 12:00"),
    (diary, tag) => diary.tag(tag, "Mon 12:00", { scheme }),
    (diary, tag) => {
      diary.tag(tag, "Mon 12:00");
      diary.route(tag, { do: "skip", step: "second seal" }, "Mon 12:05");
    },
    (diary, tag) => {
      diary.tag(tag, "Mon 12:00");
      const change = { do: "swap", step: "first clear", like: "first clear", coat: resin } as const;
      diary.route(tag, change, "Mon 12:05");
    },
    (diary, tag) => diary.came(tag, "second seal", "last Sun 20:00", "Mon 12:00"),
    (diary, tag) => diary.tag(tag, "Mon 12:00"),
  ];
  const together = new Diary(walker);
  for (const [index, go] of ways.entries()) go(together, index + 1);
  const all = tasksByTag(together);
  for (const [index, go] of ways.entries()) {
    const alone = new Diary(walker);
    go(alone, index + 1);
    expect(all.get(index + 1)).toEqual(tasksByTag(alone).get(index + 1));
  }
  expect(new Set([...all.values()].map((tasks) => JSON.stringify(tasks))).size).toBe(5);
});
