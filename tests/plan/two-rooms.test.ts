import { expect, test } from "vitest";
import { makeProblem } from "../../src/plan/make-problem.ts";
import { readShop } from "../../src/plan/plan-shop.ts";
import { Diary } from "../fixtures/diary.ts";
import { varnish, walker } from "../fixtures/walker.ts";
import { contextAt } from "./ask-now.ts";

/** Minutes after sealing 1, which is then hung on the rack, for which no lead may be melted for 2; none: it may at once. */
function keptApart(diary: Diary): readonly number[] {
  diary.came(1, "pour the ballast", "Mon 12:00", "Mon 12:00");
  diary.came(2, "drill", "Mon 12:00", "Mon 12:00");
  const { problem, pieces } = makeProblem(readShop(diary.shop(), contextAt("Mon 18:00")), false);
  const taskOf = (tag: number, step: string) => {
    const made = pieces.find((piece) => piece.tag === tag)?.tasks.find((task) => task.step === step);
    const task = problem.tasks[made?.task ?? -1];
    if (task === undefined) throw new Error(`${tag} has no ${step} to plan`);
    return task;
  };
  const melt = problem.setUps[taskOf(2, "pour the ballast").setUp ?? -1]?.gives ?? [];
  const isApart = (what: number) =>
    problem.apart.some(([one, other]) => melt.includes(one === what ? other : other === what ? one : -1));
  return taskOf(1, "seal")
    .gives.filter(({ what }) => isApart(what))
    .map(({ lasts }) => lasts);
}

const lasting = varnish.givesOff.map(({ lasts }) => lasts);

test("what a coat gives off stays in the room it was laid in, though the piece hangs in another", () => {
  expect(keptApart(new Diary(walker))).toEqual(lasting);
  const rackInYard = new Diary(walker);
  rackInYard.settle({ of: "in room", what: "rack", room: "yard" }, "Mon 10:00");
  expect(keptApart(rackInYard)).toEqual(lasting);
});

test("what is melted in a third room meets none of it", () => {
  const potInShed = new Diary(walker);
  potInShed.settle({ of: "in room", what: "rack", room: "yard" }, "Mon 10:00");
  potInShed.settle({ of: "in room", what: "lead pot", room: "shed" }, "Mon 10:00");
  expect(keptApart(potInShed)).toEqual([]);
});
