import type { RotationFile } from "../../bench/plan/rotation-file.ts";

/**
 * A rotation file as a mixed-integer program in the LP format, with big-M order variables, a set-up variable for each step and a
 * covering variable for each pair of hooks: another model of the same words, for a general solver. Minutes `r`, whole
 * turns `t`; the least span is `S`.
 */
export function rotationAsMip(file: RotationFile, period: number): string {
  return new Writing(file, period).text();
}

/** More turns than any rotation drawn here needs. */
const MOST_TURNS = 12;

class Writing {
  readonly #file: RotationFile;
  readonly #period: number;
  readonly #rows: string[] = [];
  readonly #binaries: string[] = [];
  readonly #bounds: string[] = [];

  constructor(file: RotationFile, period: number) {
    this.#file = file;
    this.#period = period;
  }

  text(): string {
    const { steps, edges, finalCure } = this.#file;
    const all = [...steps.keys()];
    for (const i of all) this.#step(i);
    for (const [from, to, least, most] of edges) {
      const p = steps[from]?.p ?? 0;
      const wait = `r${to} + ${this.#period} t${to} - r${from} - ${this.#period} t${from}`;
      this.#rows.push(`${wait} >= ${p + least}`);
      if (most !== null) this.#rows.push(`${wait} <= ${p + most}`);
    }
    for (const i of all) for (const j of all) if (i < j) this.#order(i, j);
    this.#setUps();
    this.#hooks();
    for (const i of all) {
      for (const j of all) {
        const span = `S - r${i} - ${this.#period} t${i} + r${j} + ${this.#period} t${j}`;
        this.#rows.push(`${span} >= ${(steps[i]?.p ?? 0) + finalCure}`);
      }
    }
    return [
      "Minimize",
      " obj: S",
      "Subject To",
      ...this.#rows.map((row, index) => ` c${index}: ${row}`),
      "Bounds",
      ...this.#bounds.map((bound) => ` ${bound}`),
      "General",
      ` ${all.map((i) => `r${i} t${i}`).join(" ")}`,
      "Binary",
      ` ${this.#binaries.join(" ")}`,
      "End",
    ].join("\n");
  }

  #binary(name: string): string {
    this.#binaries.push(name);
    return name;
  }

  /** One session of the period holds the step with its set-up. */
  #step(i: number): void {
    const { day, bench } = this.#file;
    const p = this.#file.steps[i]?.p ?? 0;
    const days = [...Array(this.#period / day).keys()];
    const chosen = days.map((k) => this.#binary(`x${i}_${k}`));
    this.#rows.push(`${chosen.join(" + ")} = 1`);
    const m = this.#setUpMinutes(i);
    this.#binary(`z${i}`);
    this.#rows.push(
      `r${i} - ${m} z${i} ${days.map((k) => `- ${k * day + bench[0]} x${i}_${k}`).join(" ")} >= 0`,
    );
    this.#rows.push(`r${i} ${days.map((k) => `- ${k * day + bench[1] - p} x${i}_${k}`).join(" ")} <= 0`);
    this.#bounds.push(`0 <= r${i} <= ${this.#period - 1}`, `0 <= t${i} <= ${MOST_TURNS}`);
  }

  /** y: i stands before j on the circle. Each pair keeps apart both ways round. */
  #order(i: number, j: number): void {
    const big = 2 * this.#period + 200;
    const y = this.#binary(`y${i}_${j}`);
    const there = this.#apart(i, j);
    const back = this.#apart(j, i);
    const mi = this.#setUpMinutes(i);
    const mj = this.#setUpMinutes(j);
    this.#rows.push(`r${j} - r${i} - ${mj} z${j} - ${big} ${y} >= ${there - big}`);
    this.#rows.push(`r${i} - r${j} - ${mi} z${i} - ${big} ${y} >= ${back - this.#period - big}`);
    this.#rows.push(`r${i} - r${j} - ${mi} z${i} + ${big} ${y} >= ${back}`);
    this.#rows.push(`r${j} - r${i} - ${mj} z${j} + ${big} ${y} >= ${there - this.#period}`);
    if (this.#apart(i, i) > this.#period) this.#rows.push("0 S >= 1");
  }

  /** A step without set-up has one of its own family directly before it at the station, perhaps a turn ago. */
  #setUps(): void {
    const { steps, setups } = this.#file;
    for (const [j, { station, family }] of steps.entries()) {
      const users = [...steps.keys()].filter((i) => station !== null && steps[i]?.station === station);
      if (station === null || setups[station] === undefined || users.length === 1) continue;
      const ways: string[] = [];
      for (const i of users) {
        if (i === j || steps[i]?.family !== family) continue;
        ways.push(this.#directly(i, j, users), this.#aroundTo(i, j, users));
      }
      this.#rows.push(`z${j} ${ways.map((way) => `+ ${way}`).join(" ")} >= 1`);
    }
  }

  #directly(i: number, j: number, users: readonly number[]): string {
    const way = this.#binary(`c${i}_${j}`);
    this.#rows.push(`${this.#isBefore(i, j)} - ${way} >= ${-this.#free(i, j)}`);
    for (const k of users) {
      if (k === i || k === j) continue;
      const sum = `${this.#isBefore(i, k)} ${this.#plus(k, j)} + ${way}`;
      this.#rows.push(`${sum} <= ${2 - this.#free(i, k) - this.#free(k, j)}`);
    }
    return way;
  }

  #aroundTo(i: number, j: number, users: readonly number[]): string {
    const way = this.#binary(`w${i}_${j}`);
    for (const k of users) {
      if (k !== i) this.#rows.push(`${this.#isBefore(k, i)} - ${way} >= ${-this.#free(k, i)}`);
      if (k !== j) this.#rows.push(`${this.#isBefore(j, k)} - ${way} >= ${-this.#free(j, k)}`);
    }
    return way;
  }

  /** "i before j" as a term, less the constant that `#free` gives. */
  #isBefore(i: number, j: number): string {
    return i < j ? `y${i}_${j}` : `- y${j}_${i}`;
  }

  #plus(i: number, j: number): string {
    return i < j ? `+ y${i}_${j}` : `- y${j}_${i}`;
  }

  #free(i: number, j: number): number {
    return i < j ? 0 : 1;
  }

  /** When a hold begins, those that cover its beginning and itself have room. */
  #hooks(): void {
    const { steps, hooks } = this.#file;
    if (hooks === null) return;
    const held = [...steps.keys()].filter((i) => (steps[i]?.hold?.minutes ?? 0) > 0);
    const big = 3 * this.#period;
    for (const i of held) {
      const covers: string[] = [];
      let always = 0;
      for (const j of held) {
        const minutes = steps[j]?.hold?.minutes ?? 0;
        always += Math.floor(minutes / this.#period);
        const rest = minutes % this.#period;
        if (rest === 0) continue;
        if (i === j) {
          always++;
          continue;
        }
        const cover = this.#binary(`h${j}_${i}`);
        covers.push(cover);
        const since = `r${i} - r${j} + ${big} ${cover}`;
        const least = rest + (steps[j]?.p ?? 0) - (steps[i]?.p ?? 0);
        // The time since the end of j where j stands before i; else that with a period more.
        const y = i > j ? `${big} y${j}_${i}` : `${big} y${i}_${j}`;
        const lessPeriod = least - this.#period;
        const rows =
          i > j
            ? [`- ${y} >= ${least - big}`, `+ ${y} >= ${lessPeriod}`]
            : [`+ ${y} >= ${least}`, `- ${y} >= ${lessPeriod - big}`];
        this.#rows.push(...rows.map((row) => `${since} ${row}`));
      }
      this.#rows.push(`${covers.length === 0 ? "0 S" : covers.join(" + ")} <= ${hooks - always}`);
    }
  }

  #apart(i: number, j: number): number {
    const { steps, exclusions } = this.#file;
    const one = steps[i];
    if (one === undefined) return 0;
    const marks = exclusions.map(({ after, forbids }) => {
      return steps[j]?.tags.includes(forbids) ? (one.marks[after] ?? 0) : 0;
    });
    return one.p + Math.max(0, ...marks);
  }

  #setUpMinutes(i: number): number {
    const { steps, setups } = this.#file;
    const station = steps[i]?.station ?? null;
    return station === null ? 0 : (setups[station]?.minutes ?? 0);
  }
}
