import type { Step } from "./step.ts";

/** What the order of work needs to know of a step. */
type Ordered = Pick<Step, "name" | "after">;

/**
 * The steps in an order in which they can be worked: each after all it waits for; of those that could be next, the
 * one that stands first in the file. Steps of a ring, and all that follow them, are left out.
 */
export function stepsInOrder<S extends Ordered>(steps: readonly S[]): readonly S[] {
  if (areInOrder(steps)) return steps;
  const done = new Set<string>();
  const order: S[] = [];
  let next = findNext(steps, done);
  while (next !== undefined) {
    order.push(next);
    done.add(next.name);
    next = findNext(steps, done);
  }
  return order;
}

/** Most files have their steps in working order. */
function areInOrder(steps: readonly Ordered[]): boolean {
  const done = new Set<string>();
  for (const { name, after } of steps) {
    if (done.has(name) || !after.every((before) => done.has(before))) return false;
    done.add(name);
  }
  return true;
}

function findNext<S extends Ordered>(steps: readonly S[], done: ReadonlySet<string>): S | undefined {
  return steps.find((step) => !done.has(step.name) && step.after.every((before) => done.has(before)));
}

/**
 * The names of all steps that come after a step, at once or later, in the file's order. The step itself is not among
 * them.
 */
export function stepsAfter(steps: readonly Ordered[], name: string): string[] {
  const after = new Set<string>();
  let grew = true;
  while (grew) {
    const more = steps.filter(
      (step) => !after.has(step.name) && step.after.some((before) => before === name || after.has(before)),
    );
    for (const step of more) after.add(step.name);
    grew = more.length > 0;
  }
  return steps.filter((step) => after.has(step.name) && step.name !== name).map((step) => step.name);
}

/**
 * The nearest steps before a step that lay a coat, one for each path back, in the file's order: the coats whose stage
 * and window the step waits for.
 */
export function coatsBefore<S extends Ordered & Pick<Step, "coat">>(steps: readonly S[], name: string): S[] {
  const seen = new Set<string>();
  const found = new Set<S>();
  const paths = [...(stepNamed(steps, name)?.after ?? [])];
  for (let path = paths.pop(); path !== undefined; path = paths.pop()) {
    const step = stepNamed(steps, path);
    if (step === undefined || seen.has(path)) continue;
    seen.add(path);
    if (step.coat === null) paths.push(...step.after);
    else found.add(step);
  }
  return found.size < 2 ? [...found] : steps.filter((step) => found.has(step));
}

/** The step of that name. Asked so often that a call for each step would show in a cold start. */
export function stepNamed<S extends Ordered>(steps: readonly S[], name: string): S | undefined {
  for (const step of steps) if (step.name === name) return step;
  return undefined;
}
