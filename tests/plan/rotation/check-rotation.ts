import type { RotationFile } from "../../bench/plan/rotation-file.ts";

/**
 * Everything about starts that breaks a rotation file, minute by minute on the circle and straight from the words of
 * the format; it shares no code with the solver. Empty: the rotation holds.
 */
export function checkRotation(file: RotationFile, period: number, starts: readonly number[]): string[] {
  const { steps, edges, exclusions, day, bench } = file;
  const wrong: string[] = [];
  const at = (index: number): number => starts[index] ?? Number.NaN;
  if (starts.length !== steps.length || starts.some((start) => !Number.isInteger(start))) {
    return ["not every step has a start in whole minutes"];
  }
  for (const [from, to, least, most] of edges) {
    const waited = at(to) - at(from) - (steps[from]?.p ?? 0);
    if (waited < least || (most !== null && waited > most)) wrong.push(`${from} to ${to} waits ${waited}`);
  }
  const setUp = steps.map((_, index) => setUpBefore(file, period, starts, index));
  const hands = new Array<number[]>(period);
  for (let minute = 0; minute < period; minute++) hands[minute] = [];
  for (const [index, { p }] of steps.entries()) {
    for (let minute = at(index) - (setUp[index] ?? 0); minute < at(index) + p; minute++) {
      hands[round(minute, period)]?.push(index);
      const ofDay = round(minute, day);
      if (ofDay < bench[0] || ofDay >= bench[1])
        wrong.push(`${index} is worked at ${ofDay}, outside the bench`);
    }
    if (Math.floor((at(index) - (setUp[index] ?? 0)) / day) !== Math.floor((at(index) + p - 1) / day)) {
      wrong.push(`${index} runs over midnight`);
    }
  }
  for (const [minute, there] of hands.entries()) {
    if (there.length > 1) wrong.push(`${there.join(" and ")} share the hands at ${minute}`);
  }
  for (const { after, forbids } of exclusions) {
    for (const [index, { p, marks }] of steps.entries()) {
      const mark = marks[after];
      if (mark === undefined) continue;
      for (let minute = at(index); minute < at(index) + p + mark; minute++) {
        for (const other of hands[round(minute, period)] ?? []) {
          const over = other === index && minute < at(index) + p;
          if (!over && steps[other]?.tags.includes(forbids))
            wrong.push(`${other} runs in the ${after} of ${index}`);
        }
      }
    }
  }
  return [...new Set([...wrong, ...checkHooks(file, period, starts)])];
}

/** Last end with the final cure, less first start. */
export function spanOfRotation({ steps, finalCure }: RotationFile, starts: readonly number[]): number {
  const ends = steps.map(({ p }, index) => (starts[index] ?? Number.NaN) + p);
  return Math.max(...ends) + finalCure - Math.min(...starts);
}

/** Minutes of set-up that a step needs: the step before it round the circle at its station had another family. */
function setUpBefore(
  { steps, setups }: RotationFile,
  period: number,
  starts: readonly number[],
  index: number,
): number {
  const step = steps[index];
  const rule = step?.station === null || step === undefined ? undefined : setups[step.station];
  if (step === undefined || rule === undefined) return 0;
  let nearest = period;
  let family = step.family;
  for (const [other, { station, family: its }] of steps.entries()) {
    if (station !== step.station) continue;
    const back = round((starts[index] ?? 0) - (starts[other] ?? 0), period) || period;
    if (back < nearest) [nearest, family] = [back, its];
  }
  return family === step.family ? 0 : rule.minutes;
}

function checkHooks({ steps, hooks }: RotationFile, period: number, starts: readonly number[]): string[] {
  if (hooks === null) return [];
  const taken = new Array<number>(period).fill(0);
  for (const [index, { p, hold }] of steps.entries()) {
    const from = (starts[index] ?? 0) + p;
    for (let minute = from; minute < from + (hold?.minutes ?? 0); minute++) {
      const place = round(minute, period);
      taken[place] = (taken[place] ?? 0) + 1;
    }
  }
  const most = Math.max(...taken);
  return most > hooks ? [`${most} hang at once`] : [];
}

const round = (minute: number, period: number): number => ((minute % period) + period) % period;
