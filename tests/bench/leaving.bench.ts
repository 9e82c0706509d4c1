import { leftWork } from "../../src/plan/left-work.ts";
import { nowRows } from "../../src/plan/now-rows.ts";
import { readShop } from "../../src/plan/plan-shop.ts";
import { problemToPlan } from "../../src/plan/problem-to-plan.ts";
import { beginSearch } from "../../src/plan/search/search.ts";
import { dispatchNow } from "../../src/plan/what-now.ts";
import { PlansWithout } from "../../src/plan/without-by-plan.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker } from "../fixtures/walker.ts";
import { contextAt } from "../plan/ask-now.ts";
import type { Row } from "./compare-runs.ts";

const PIECES = 20;
/** With eleven steps, one of them in four colours, a piece is fourteen tasks. */
const scheme = ["white", "ochre", "bone", "black"].map((colour) => ({ colour, minutes: 6, flashOff: 5 }));

/**
 * What leaving each of 20 pieces costs, 14 tasks each, warm, as the planner's thread reckons it at first. Time of the
 * processor, which other programs do not lengthen.
 */
export function measure(): Row[] {
  const diary = new Diary(walker);
  for (let tag = 1; tag <= PIECES; tag++) {
    diary.tag(tag, "Mon 17:00", { scheme });
    diary.say(tag, { kind: "measured", what: "wood moisture", value: 8, unit: "%" }, "Mon 17:00");
  }
  const facts = readShop(diary.shop(), contextAt("Mon 18:00"));
  const made = problemToPlan(facts);
  const { work } = nowRows(dispatchNow(facts));
  const leaves = work.map((row) => leftWork(row, facts, made));
  const search = beginSearch(made.problem, { seed: 1, warm: null });
  search.go(200);
  const { plan } = search.found;
  const times: number[] = [];
  let finished = 0;
  for (let round = 0; round < 12; round++) {
    const begun = process.cpuUsage();
    const plans = new PlansWithout(made.problem, plan, 1);
    for (const left of leaves) {
      const without = plans.begin(left);
      without.go(8);
      finished += without.found.finish.length;
    }
    // The first rounds meet cold code.
    const { user, system } = process.cpuUsage(begun);
    if (round >= 4) times.push((user + system) / 1000);
  }
  if (finished === 0) throw new Error("nothing was left");
  times.sort((a, b) => a - b);
  return [
    {
      name: `leaving each of ${leaves.length} rows, ${made.problem.tasks.length} tasks (at most 100)`,
      value: times[times.length >> 1] ?? Number.NaN,
      unit: "ms",
      ratio: null,
    },
  ];
}
