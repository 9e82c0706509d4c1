import type { LooseStep } from "./check-process.ts";
import { nearestWord } from "./nearest.ts";
import { stepsAfter } from "./order.ts";
import { type Finding, showValue } from "./problem.ts";

/** A step as far as its place in the order could be read. */
interface PlacedStep {
  readonly index: number;
  readonly name: string;
  readonly after: readonly string[];
}

/** What is wrong with the names of the steps, with what they come after, and with where their answers lead. */
export function checkStepOrder(steps: readonly LooseStep[]): Finding[] {
  const placed = placeSteps(steps);
  const names = placed.map(({ name }) => name);
  return [
    ...checkNames(placed),
    ...steps.flatMap((step) => checkAfter(step, names)),
    ...findRings(placed),
    ...steps.flatMap((step) => checkResult(step, placed)),
  ];
}

/** The steps whose names could be read, each after the steps it names or, if it names none, the one above it. */
export function placeSteps(steps: readonly LooseStep[]): PlacedStep[] {
  return steps.flatMap(({ fields, index }) => {
    const above = steps[index - 1]?.fields.step;
    const after = fields.after ?? (above === undefined ? [] : [above]);
    return fields.step === undefined ? [] : [{ index, name: fields.step, after }];
  });
}

function checkNames(placed: readonly PlacedStep[]): Finding[] {
  const seen = new Set<string>();
  return placed.flatMap(({ index, name }) => {
    const path = ["steps", index, "step"];
    const taken = seen.has(name.toLowerCase());
    seen.add(name.toLowerCase());
    if (taken)
      return [
        { path, what: `a step above is called ${showValue(name)}, too`, expected: "give it another name" },
      ];
    if (name !== "on") return [];
    return [
      {
        path,
        what: 'a step is called "on", which as an answer means to go on',
        expected: "give it another name",
      },
    ];
  });
}

function checkAfter({ fields, index }: LooseStep, names: readonly string[]): Finding[] {
  return (fields.after ?? []).flatMap((before, place) =>
    names.includes(before) ? [] : [unknownStep(["steps", index, "after", place], before, names)],
  );
}

function unknownStep(path: Finding["path"], name: string, names: readonly string[]): Finding {
  const nearest = nearestWord(name, names);
  const expected = nearest === null ? "write the name of a step of this process" : `did you mean ${nearest}?`;
  return { path, what: `no step is called ${showValue(name)}`, expected };
}

/** One finding for each ring of steps that wait for each other, at its first step. */
function findRings(placed: readonly PlacedStep[]): Finding[] {
  // Of two steps of one name nobody can say which is meant: that is told, and rings would be guesses.
  if (new Set(placed.map(({ name }) => name)).size < placed.length) return [];
  const told = new Set<string>();
  return placed.flatMap(({ index, name, after }) => {
    const following = stepsAfter(placed, name);
    if (told.has(name) || !after.some((before) => before === name || following.includes(before))) return [];
    const ring = placed.filter(
      (other) =>
        other.name === name ||
        (following.includes(other.name) && stepsAfter(placed, other.name).includes(name)),
    );
    for (const member of ring) told.add(member.name);
    const members = ring.map((member) => showValue(member.name)).join(", ");
    const what = ring.length === 1 ? `${members} comes after itself` : `${members} each come after the other`;
    return [{ path: ["steps", index, "after"], what, expected: 'take one of them out of "after"' }];
  });
}

function checkResult({ fields, index }: LooseStep, placed: readonly PlacedStep[]): Finding[] {
  const { step, result } = fields;
  if (result === undefined) return [];
  const path = ["steps", index, "result"];
  const findings = Object.entries(result).flatMap(([answer, target]): Finding[] => {
    if (target === "on" || target === step) return [];
    if (!placed.some(({ name }) => name === target)) {
      return [unknownStep([...path, answer], target, [...placed.map(({ name }) => name), "on"])];
    }
    if (step === undefined || stepsAfter(placed, target).includes(step)) return [];
    const what = `the answer ${showValue(answer)} leads to ${showValue(target)}, which does not come before`;
    return [{ path: [...path, answer], what, expected: "write on, or a step that comes before this one" }];
  });
  if (Object.values(result).includes("on")) return findings;
  const expected = "write an answer that goes on, as { passes: on }";
  return [...findings, { path, what: "no answer goes on, so nothing is ever finished", expected }];
}
