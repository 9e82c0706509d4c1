import type { HeldRow, NowAnswer, WorkRow } from "../plan/now-answer.ts";
import { layOut } from "../words/lay-out.ts";
import { sayColdAhead, sayShopAir } from "../words/say-air.ts";
import { sayHeld } from "../words/say-hold.ts";
import { capital } from "../words/say-list.ts";
import { sayPlanStanding } from "../words/say-plan-standing.ts";
import { saySetAside } from "../words/say-set-aside.ts";
import { sayDayAndClock } from "../words/say-time.ts";
import { sayBench, sayOpening, sayPrepared, sayStage } from "../words/say-waiting.ts";
import { sayWarning } from "../words/say-warning.ts";
import { sayEffort, sayHandRow, sayHeldWhat, sayWho, sayWhy, sayWorkRow } from "../words/say-work.ts";
import type { Speech } from "../words/speech.ts";
import { AS_OF, type Command } from "./command.ts";
import { nowJson } from "./now-json.ts";

/**
 * The everyday question. It must stay quick: nothing here may load zod, yaml, conf, Ink or Intl, and it is what runs when
 * nothing is typed and there is no terminal.
 */
export const now: Command = {
  usage: ["now"],
  says: "what can be worked now, best first, and what waits",
  options: AS_OF,
  examples: [
    ["now", "the work of this minute"],
    ['now --at "Fri 18:00"', "as it will be on Friday when the bench opens"],
    ["now --json", "the same for other programs"],
  ],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const asked = words.moment("at", speech, "near");
    words.nothingMore();
    if (words.problems.length > 0) return { problems: words.problems };
    const answer = await workshop.whatNow(asked ?? undefined);
    const then = { ...speech, now: answer.at };
    const { setAside } = await workshop.shop();
    return {
      text: [...sayNow(answer, then, bench.context.columns), ...saySetAside(setAside)],
      get json() {
        return nowJson(answer, then);
      },
    };
  },
};

/** The whole answer as lines: the hour, what is in hand, work, what is held, what waits, what stands at the stations. */
export function sayNow(answer: NowAnswer, speech: Speech, columns: number | null): string[] {
  const { work, inHand, held, waiting, prepared } = answer;
  const nothing = work.length + inHand.length + held.length + waiting.length === 0;
  return [
    [sayDayAndClock(answer.at, speech), sayBench(answer.bench, speech), ...sayShopAir(answer, speech)].join(
      ", ",
    ),
    ...sayColdAhead(answer.cold, speech),
    ...section(
      "In hand",
      layOut(
        inHand.map((row) => [sayHandRow(row, speech)]),
        columns,
      ),
    ),
    ...section(
      ["Work now", sayPlanStanding(answer)].filter(Boolean).join(", "),
      sayWork(work, speech, columns),
    ),
    ...section(
      "Held",
      layOut(
        heldTogether(held).map((row) => [
          sayWho(row),
          sayHeldWhat(row),
          sayEffort(row),
          sayHeld(row, speech),
        ]),
        columns,
      ),
    ),
    ...section(
      answer.air === null ? "Waiting" : "Waiting, as predicted for this air",
      layOut(
        waiting.map((row) => [`${row.tag} ${row.name}`, sayStage(row), row.step, sayOpening(row, speech)]),
        columns,
      ),
    ),
    ...section(
      "At the stations",
      layOut(
        prepared.map((row) => [sayPrepared(row, speech)]),
        columns,
      ),
    ),
    ...(nothing
      ? ["", 'Nothing is out. Begin one: dryline tag "carved walker"; dryline process lists them.']
      : []),
  ];
}

/** Each row with why it stands there and what leaving it costs on a line below, so that 80 columns are enough. */
function sayWork(work: readonly WorkRow[], speech: Speech, columns: number | null): string[] {
  const rows = work.map((row) => ({
    said: sayWorkRow(row, speech),
    why: row.why,
    warning: row.warning,
  }));
  const lines = layOut(
    rows.map(({ said }) => [said.who, said.what, said.effort, said.by]),
    columns,
  );
  return lines.flatMap((line, index) => {
    const row = rows[index];
    if (row === undefined) return [line];
    // The rule that orders what nothing presses is told once, not under each of its rows.
    const told = rows.findIndex(({ why }) => why.because === row.why.because) < index;
    const why = told && row.why.because === "in the order of finishing" ? "" : sayWhy(row.why, speech);
    const reasons = [why, row.said.ifLeft].filter(Boolean).join("; ");
    const warning = row.warning === null ? [] : [`      ${capital(sayWarning(row.warning, speech))}.`];
    return [line, ...(reasons === "" ? [] : [`      ${capital(reasons)}.`]), ...warning];
  });
}

/** Pieces that the same holds back from the same step share a row. */
function heldTogether(held: readonly HeldRow[]): readonly HeldRow[] {
  const groups = new Map<string, HeldRow>();
  for (const row of held) {
    const key = JSON.stringify([
      row.tags.length === 0,
      row.step,
      row.setUp,
      row.because,
      row.also,
      row.preparation,
      row.until,
    ]);
    const group = groups.get(key);
    const joined = group && {
      ...group,
      tags: [...group.tags, ...row.tags],
      name: null,
      minutes: group.minutes + row.minutes,
    };
    groups.set(key, joined ?? row);
  }
  return [...groups.values()];
}

/** A title over its lines, parted from what is above; nothing where there are no lines. */
function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ["", title, ...lines];
}
