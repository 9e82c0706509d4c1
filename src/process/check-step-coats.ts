import type { LooseStep } from "./check-process.ts";
import { placeSteps } from "./check-step-order.ts";
import type { Coat, Stage } from "./coat.ts";
import { nearestWord } from "./nearest.ts";
import { coatsBefore } from "./order.ts";
import { type Finding, showValue } from "./problem.ts";

/** What is wrong between steps and coats: coats nobody knows, stages they do not name, work that cannot be so. */
export function checkStepCoats(
  steps: readonly LooseStep[],
  coats: Readonly<Record<string, Coat>>,
): Finding[] {
  return steps.flatMap((step) => [
    ...checkWork(step, coats),
    ...checkPlace(step, coats),
    ...checkWaiting(step, steps, coats),
  ]);
}

function checkWork(
  { fields, bad, index, said }: LooseStep,
  coats: Readonly<Record<string, Coat>>,
): Finding[] {
  const path = ["steps", index];
  const findings: Finding[] = [];
  const { coat, passes } = fields;
  if (coat !== undefined && !Object.hasOwn(coats, coat)) {
    const nearest = nearestWord(coat, Object.keys(coats));
    const expected =
      nearest === null ? "write the name of a coat that has a file" : `did you mean ${nearest}?`;
    findings.push({ path: [...path, "coat"], what: `no coat is called ${showValue(coat)}`, expected });
  }
  if (fields.may_stop === true && (coat !== undefined || bad.has("coat"))) {
    const what = '"may_stop" is said of a step that lays a coat';
    findings.push({ path: [...path, "may_stop"], what, expected: "take it out: a coat begun is finished" });
  }
  if (passes === "scheme" && coat === undefined && !bad.has("coat")) {
    const what = '"passes" are those of the scheme, but no coat is named';
    findings.push({ path: [...path, "passes"], what, expected: 'write which "coat" its colours are' });
  }
  const timed = fields.hands_on !== undefined || bad.has("hands_on");
  if (said && !timed && passes !== "scheme" && !bad.has("passes")) {
    const expected = "write hands-on time, as 6 min, 4..6 min or 5..8..12 min";
    findings.push({ path, what: '"hands_on" is missing', expected });
  }
  return findings;
}

/** A place is kept until something: a stage of the coat, a time, or the step's wait. */
function checkPlace({ fields, bad, index }: LooseStep, coats: Readonly<Record<string, Coat>>): Finding[] {
  const path = ["steps", index];
  const { place, until, coat } = fields;
  if (place === undefined) {
    const loose = bad.has("place")
      ? undefined
      : (["until", "for"] as const).find((key) => fields[key] !== undefined);
    if (loose === undefined) return [];
    return [
      {
        path: [...path, loose],
        what: `"${loose}" is said, but no place`,
        expected: 'write where it hangs: "place"',
      },
    ];
  }
  if (until !== undefined && fields.for !== undefined) {
    return [
      { path: [...path, "for"], what: '"until" and "for" are both said', expected: "keep one of them" },
    ];
  }
  if (fields.for !== undefined || bad.has("for") || bad.has("until") || bad.has("coat")) return [];
  if (coat === undefined) {
    if (until !== undefined) {
      const expected = 'write "for" and a time, or the "coat" it lays';
      return [{ path: [...path, "until"], what: `it hangs until ${until}, but lays no coat`, expected }];
    }
    if ((fields.wait ?? 0) > 0 || bad.has("wait")) return [];
    return [
      { path: [...path, "place"], what: "nothing says how long it hangs", expected: 'write "for" or "wait"' },
    ];
  }
  const stage = until ?? "dry-hard";
  if (!lacksStage(coats, coat, stage)) return [];
  const expected = `write "until" another stage or "for" a time, or ${stage} in the coat's file`;
  return [
    {
      path: [...path, until === undefined ? "place" : "until"],
      what: `it hangs until ${stage}, of which ${showValue(coat)} gives no time`,
      expected,
    },
  ];
}

/** A step waits for a stage of the coat before it: that must be, and name the stage. */
function checkWaiting(
  { fields, index }: LooseStep,
  steps: readonly LooseStep[],
  coats: Readonly<Record<string, Coat>>,
): Finding[] {
  const path = ["steps", index];
  const before = fields.step === undefined ? [] : findCoatsBefore(fields.step, steps);
  const waitsFor = fields.waits_for;
  if (waitsFor !== undefined && fields.step !== undefined && before.length === 0) {
    const expected = 'take it out, or put the step "after" one that lays a coat';
    return [
      { path: [...path, "waits_for"], what: `it waits for ${waitsFor}, but no coat comes before`, expected },
    ];
  }
  // The next coat goes by its window; other work waits for dry-hard unless said.
  const stage = waitsFor ?? (fields.coat === undefined ? "dry-hard" : null);
  if (stage === null) return [];
  return before
    .filter((coat) => lacksStage(coats, coat, stage))
    .map((coat) => ({
      path: waitsFor === undefined ? path : [...path, "waits_for"],
      what: `it waits for ${stage}, of which ${showValue(coat)} gives no time`,
      expected: `write another stage under "waits_for", or ${stage} in the coat's file`,
    }));
}

/** The names of the nearest coats before a step. */
function findCoatsBefore(name: string, steps: readonly LooseStep[]): string[] {
  const placed = placeSteps(steps).map((step) => ({ ...step, coat: steps[step.index]?.fields.coat ?? null }));
  return [...new Set(coatsBefore(placed, name).flatMap(({ coat }) => coat ?? []))];
}

/** Of a coat that is not known, nothing is said here: that it is not known is told already. */
function lacksStage(coats: Readonly<Record<string, Coat>>, coat: string, stage: Stage): boolean {
  return Object.hasOwn(coats, coat) && coats[coat]?.stages[stage] === undefined;
}
