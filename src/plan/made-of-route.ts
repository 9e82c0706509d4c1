import type { ProcessDefinition } from "../process/definition.ts";
import type { Step } from "../process/step.ts";
import type { MadeTask } from "./make-tasks.ts";
import type { Gives, Task, Wait } from "./problem.ts";

/** Makes a thing once for each key and word, and keeps it. */
class Once<Key extends object, Made> {
  readonly #made = new Map<Key, Map<string, Made>>();

  make(key: Key, word: string, make: () => Made): Made {
    const ofKey = this.#made.get(key) ?? new Map<string, Made>();
    this.#made.set(key, ofKey);
    const made = ofKey.get(word) ?? make();
    ofKey.set(word, made);
    return made;
  }
}

/** What was made for one piece and serves all others that go the same way through the same process. */
export class MadeOfRoute {
  /** The coats below a step. */
  readonly under = new Once<Step, readonly Step[]>();
  /** By step and pass; the piece is that of the first. */
  readonly tasks = new Once<Step, Task>();
  /** By step and colour. */
  readonly words = new Once<Step, Omit<MadeTask, "task" | "pass" | "facts">>();
  /** By what a task gives off, which each has for itself, and what it waits for. */
  readonly windows = new Once<readonly Gives[], Pick<Wait, "windows" | "mend">>();
}

/** The routes of a shop: with twenty pieces out most of what a problem is made of is the same twenty times. */
export class Routes {
  readonly #made = new Map<ProcessDefinition, Map<readonly Step[], MadeOfRoute>>();

  of(definition: ProcessDefinition, route: readonly Step[]): MadeOfRoute {
    const ofProcess = this.#made.get(definition) ?? new Map<readonly Step[], MadeOfRoute>();
    this.#made.set(definition, ofProcess);
    const made = ofProcess.get(route) ?? new MadeOfRoute();
    ofProcess.set(route, made);
    return made;
  }
}
