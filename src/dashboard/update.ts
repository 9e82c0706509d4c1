import type { Instant } from "../time/instant.ts";
import { answerKey } from "./answer-key.ts";
import { sayBrokenFiles } from "./broken-files.ts";
import { showDays, withDaysAnew } from "./days-view.ts";
import { still } from "./key-steps.ts";
import { pressKey } from "./press-key.ts";
import { keepOrder, rowsOf } from "./rows.ts";
import type { DashboardState, Facts, Happened, Step } from "./state.ts";

/** Rows keep their places so long after a key, in milliseconds. */
const HAND_RESTS = 3000;

/** What happened makes the next state and what must be done. Pure: the loop in run-dashboard.ts does it. */
export function update(state: DashboardState, happened: Happened): Step {
  switch (happened.is) {
    case "key": {
      const pressed = { ...state, now: happened.now, lastKeyAt: happened.now };
      return withActing(
        pressed.overlay === null
          ? pressKey(pressed, happened.key)
          : answerKey(pressed, pressed.overlay, happened.key),
      );
    }
    case "listening":
      // An Enter that was waiting is the one that started the program, bounced: it must not take what stands first.
      return still({ ...state, lastEnterAt: happened.now });
    case "tick":
      return still(settleRows(state, happened.now));
    case "size":
      return still({ ...state, size: happened.size });
    case "facts":
      return withDaysAnew(withBrokenFiles(withFacts(state, happened.facts), state.facts));
    case "told":
      return still({ ...state, message: happened.message, refused: null });
    case "refused":
      return still({
        ...state,
        message: {
          text: happened.mayGoOn ? `${happened.text} (! goes on all the same)` : happened.text,
          tone: "refused",
        },
        refused: happened.mayGoOn ? happened.request : null,
        acting: [],
      });
    case "unread":
      return still({
        ...state,
        overlay: {
          is: "caution",
          cautions: happened.cautions,
          lines: happened.lines,
          top: 0,
          request: happened.request,
        },
      });
    case "days":
      return still(showDays(state, happened));
    case "overlay":
      return still({ ...state, overlay: happened.overlay });
  }
}

function withFacts(state: DashboardState, facts: Facts): DashboardState {
  const fresh = rowsOf(facts.answer);
  const now = facts.answer.at;
  const rows = isHandBusy(state, now) ? keepOrder(state.rows, fresh) : fresh;
  const taken = rows.find(
    (row) => row.is === "hand" && !row.row.left && state.acting.some((tag) => row.row.tags.includes(tag)),
  );
  return {
    ...state,
    now,
    facts,
    rows,
    mark: taken?.id ?? markAmong(rows, state),
    acting: taken === undefined ? state.acting : [],
  };
}

/** Tells at once of files that cannot be used: as the dashboard opens, and when one breaks while it is open. */
function withBrokenFiles(state: DashboardState, before: Facts | null): DashboardState {
  const problems = state.facts?.fileProblems ?? [];
  if (problems.every((problem) => before?.fileProblems.includes(problem))) return state;
  return { ...state, message: { text: sayBrokenFiles(state.facts), tone: "refused" } };
}

/** Remembers what a key asked to take: its row is the next one wanted. */
function withActing({ state, effects }: Step): Step {
  const takes = effects.flatMap((effect) =>
    effect.do === "perform" && effect.request.act === "take" ? effect.request.tags : [],
  );
  return { state: takes.length === 0 ? state : { ...state, acting: takes }, effects };
}

/** The mark stays with its row; until a key was pressed it is the best row's, whichever that turns out to be. */
function markAmong(rows: DashboardState["rows"], state: DashboardState): string | null {
  const ids = rows.map(({ id }) => id);
  if (state.lastKeyAt === 0) return ids[0] ?? null;
  return state.mark !== null && ids.includes(state.mark) ? state.mark : followMark(state, ids);
}

/** A clock that was set back leaves no key in the time to come. */
function isHandBusy({ lastKeyAt }: DashboardState, now: Instant): boolean {
  return now >= lastKeyAt && now - lastKeyAt < HAND_RESTS;
}

/** Once the hand has rested, rows go where they belong; nothing else changes by a tick. */
function settleRows(state: DashboardState, now: Instant): DashboardState {
  if (state.facts === null || isHandBusy(state, now)) return state;
  const fresh = rowsOf(state.facts.answer);
  const settled = fresh.every(({ id }, index) => state.rows[index]?.id === id);
  return settled ? state : { ...state, now, rows: fresh };
}

/** A marked row that went away leaves the mark at its place; the first rows of all are marked from the top. */
function followMark(state: DashboardState, ids: readonly string[]): string | null {
  const old = state.rows.findIndex(({ id }) => id === state.mark);
  return ids[Math.min(Math.max(old, 0), ids.length - 1)] ?? null;
}
