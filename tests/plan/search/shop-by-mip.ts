import type { Problem, Wait } from "../../../src/plan/problem.ts";

/** Longer than any of the waits that these shops can have. */
const LONG = 1000;

/**
 * A shop of one pair of hands without stations as a mixed-integer program in the LP format: one variable for each task,
 * start and window used, as an engineer would write it who knows nothing of orders of work. Its least objective is
 * what the best plan costs that works everything.
 */
export function programOf(problem: Problem): string {
  const { tasks, pieces, prices } = problem;
  const starts = tasks.map((_, task) => startsOf(problem, task));
  const minute = starts.map((own) => own.map(({ name, start }) => `${start} ${name}`).join(" + "));
  const rows: string[] = starts.map((own) => `${own.map(({ name }) => name).join(" + ")} = 1`);
  const last = Math.max(...problem.sessions.map(({ closes }) => closes));
  for (let now = 0; now < last; now++) {
    const busy = starts
      .flat()
      .filter(({ start, lead, minutes }) => start - lead <= now && now < start + minutes);
    if (busy.length > 1) rows.push(`${busy.map(({ name }) => name).join(" + ")} <= 1`);
  }
  const objective: string[] = [];
  for (const [task, { piece, minutes, waits }] of tasks.entries()) {
    rows.push(`${minute[task]} - s${task} = 0`);
    for (const wait of waits) {
      const before = tasks[wait.on]?.minutes ?? 0;
      const [least, most] = [bound(wait, "opens"), bound(wait, "shuts")].map((ends) =>
        (starts[task] ?? []).map(({ name, window }) => `- ${ends[window] ?? LONG} ${name}`).join(" "),
      );
      rows.push(
        `s${task} - s${wait.on} ${least} >= ${before}`,
        `s${task} - s${wait.on} ${most} <= ${before}`,
      );
    }
    const { cure, due } = pieces[piece] ?? { cure: 0, due: null };
    rows.push(`c${piece} - s${task} >= ${minutes + cure}`);
    if (due !== null) rows.push(`t${piece} - c${piece} >= ${-due}`);
    for (const { name, lead } of starts[task] ?? []) {
      if (lead > 0) objective.push(`${prices.amends * lead} ${name}`);
    }
  }
  for (const [piece, { weight }] of pieces.entries()) {
    objective.push(`${prices.flow} c${piece}`, `${prices.late * weight} t${piece}`);
  }
  const names = starts.flat().map(({ name }) => name);
  return `Minimize\n obj: ${objective.join("\n + ")}\nSubject To\n ${rows.join("\n ")}\nBinary\n ${names.join("\n ")}\nEnd\n`;
}

/** Every start of a task inside a session and in fit air, once for each window of its wait, with that window's preparation before it. */
function startsOf({ tasks, sessions, pieces }: Problem, task: number) {
  const { minutes, waits, piece, unfit = [] } = tasks[task] ?? { minutes: 0, waits: [], piece: 0 };
  const windows = waits[0]?.windows ?? [{ preparation: null }];
  return windows.flatMap(({ preparation }, window) => {
    const lead = preparation?.minutes ?? 0;
    return sessions.flatMap(({ opens, closes }) => {
      const from = Math.max(opens, pieces[piece]?.release ?? 0) + lead;
      const count = Math.max(0, closes - minutes - from + 1);
      const starts = Array.from({ length: count }, (_, more) => from + more).filter((start) =>
        unfit.every(([begins, ends]) => start + minutes <= begins || start >= ends),
      );
      return starts.map((start) => ({ name: `x${task}_${start}_${window}`, start, lead, minutes, window }));
    });
  });
}

/** Least or greatest wait from end to start, by window. */
function bound({ windows }: Wait, end: "opens" | "shuts"): (number | null)[] {
  return windows.map((window) => {
    const lag = window[end];
    if (typeof lag !== "number") return null;
    return end === "opens" ? lag + (window.preparation?.minutes ?? 0) : lag;
  });
}
