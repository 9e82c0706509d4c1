import { checkCautions } from "./check-coat.ts";
import { checkStepCoats } from "./check-step-coats.ts";
import { checkStepOrder } from "./check-step-order.ts";
import type { Coat } from "./coat.ts";
import type { LooseFields } from "./loose-fields.ts";
import type { Finding } from "./problem.ts";
import type { StepFields } from "./process-schema.ts";

/** What a process may name that stands in other files. */
export interface KnownNames {
  readonly coats: Readonly<Record<string, Coat>>;
  /** Names of cautions; left out: not checked. */
  readonly cautions?: readonly string[];
}

/** A step of a file with its place in the list, as far as it could be read. */
export type LooseStep = LooseFields<StepFields> & {
  readonly index: number;
  /** False: the entry says nothing that could be a step. */
  readonly said: boolean;
};

/** What the steps of a process say against each other and against the coats they name. */
export function checkProcess(steps: readonly LooseStep[], known: KnownNames): Finding[] {
  return [
    ...checkStepOrder(steps),
    ...checkStepCoats(steps, known.coats),
    ...steps.flatMap((step) => checkSetUp(step, known.cautions)),
    ...steps.flatMap(checkBallast),
    ...checkSameSetUps(steps),
  ];
}

/** A hole has a depth, or is made for a weight: both could only contradict each other. */
function checkBallast({ fields: { ballast }, index }: LooseStep): Finding[] {
  if (ballast === undefined || (ballast.deep === undefined) !== (ballast.weight === undefined)) return [];
  const what =
    ballast.deep === undefined
      ? "nothing says how deep the holes are"
      : "the holes have a depth and a weight too";
  const expected = 'write "deep", or the "weight" they are to take, not both';
  return [{ path: ["steps", index, "ballast"], what, expected }];
}

function checkSetUp({ fields, bad, index }: LooseStep, cautions?: readonly string[]): Finding[] {
  const path = ["steps", index];
  const setUp = fields.set_up;
  const findings = [
    ...checkCautions(fields.cautions, path, cautions),
    ...checkCautions(setUp?.cautions, [...path, "set_up"], cautions),
  ];
  const wanted = setUp?.do.replaceAll("{colour}", "").match(/[{}]/);
  if (wanted) {
    const expected = "write {colour}, which the colour of the pass takes the place of, or no brackets";
    findings.push({ path: [...path, "set_up", "do"], what: '"do" has brackets that mean nothing', expected });
  }
  if (setUp !== undefined || bad.has("set_up")) return findings;
  for (const { what } of (fields.gives_off ?? []).filter(({ lasts }) => lasts === "while set up")) {
    findings.push({
      path: [...path, "gives_off", what],
      what: `${what} is given off "while set up", but the step has no set-up`,
      expected: 'write a "set_up", or for how long after the work, as 40 min',
    });
  }
  return findings;
}

/** One pot at one station is one pot: two steps that share it must say the same of it. */
function checkSameSetUps(steps: readonly LooseStep[]): Finding[] {
  const seen = new Map<string, string>();
  return steps.flatMap(({ fields, index }) => {
    const setUp = fields.set_up;
    if (setUp === undefined) return [];
    const key = JSON.stringify([fields.station ?? "bench", setUp.do]);
    const said = JSON.stringify([setUp.takes, setUp.keeps, setUp.put_away ?? 0]);
    const before = seen.get(key) ?? said;
    seen.set(key, before);
    if (before === said) return [];
    const what = `"${setUp.do}" takes or keeps otherwise than in a step above, at the same station`;
    return [
      { path: ["steps", index, "set_up"], what, expected: "write the same in both, or call it otherwise" },
    ];
  });
}
