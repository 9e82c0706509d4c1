import type { Minutes } from "../../../time/instant.ts";
import { isLookOf, type Route } from "./route.ts";

/** The two tables of a circle, less than 0 for none; `made` counts to the start after a set-up is made. */
export class ApartTables {
  readonly #size: number;
  readonly #standing: Int32Array;
  readonly #made: Int32Array;
  /** Tasks that are kept apart from the same others for as long: one of each kind, and how many there are. */
  readonly kinds: readonly { readonly task: number; readonly count: number }[];
  /** Tasks that are looks. */
  readonly isLook: ReadonlySet<number>;

  constructor(route: Route) {
    const { circle } = route;
    const { tasks, apart, apartFromSetUp, setUps } = circle;
    this.#size = tasks.length;
    this.#standing = Int32Array.from(apart.flat(), (least) => least ?? -1);
    this.#made = Int32Array.from(apartFromSetUp.flat(), (least, index) => {
      const head = setUps[tasks[index % tasks.length]?.setUp ?? -1]?.minutes ?? 0;
      return least === null ? -1 : least + head;
    });
    this.isLook = isLookOf(route);
    const kinds = new Map<string, { task: number; count: number }>();
    for (const task of tasks.keys()) {
      if (this.isLook.has(task)) continue;
      const { minutes } = tasks[task] as (typeof tasks)[number];
      const kind = tasks.map((other, at) => [
        this.standing(at, task) - other.minutes,
        this.standing(task, at) - minutes,
      ]);
      const key = JSON.stringify(kind);
      kinds.set(key, { task, count: (kinds.get(key)?.count ?? 0) + 1 });
    }
    this.kinds = [...kinds.values()];
  }

  standing(from: number, to: number): Minutes {
    return this.#standing[from * this.#size + to] as number;
  }

  made(from: number, to: number): Minutes {
    return this.#made[from * this.#size + to] as number;
  }
}
