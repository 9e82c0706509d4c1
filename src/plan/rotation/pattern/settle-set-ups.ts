import type { ApartTables } from "./apart-tables.ts";
import { mod } from "./mod.ts";
import { Occupied } from "./occupied.ts";
import type { Placed } from "./placed.ts";
import type { Route } from "./route.ts";

/**
 * Settles anew for every task whether its set-up is made or stands, after pieces were put in or taken out: what can
 * stand is not made, and what stood from a piece that is gone is made where there is room.
 *
 * @returns the pieces that stay: one whose set-up neither stands nor can be made is taken out as well
 */
export function settleSetUps(
  route: Route,
  tables: ApartTables,
  pieces: readonly Placed[],
): readonly Placed[] {
  let left = pieces;
  for (;;) {
    const settled = settleAll(route, tables, left);
    if (typeof settled !== "number") return settled;
    left = left.filter((_, index) => index !== settled);
  }
}

/** @returns the pieces with their set-ups settled, or the number of one that cannot stay */
function settleAll(route: Route, tables: ApartTables, pieces: readonly Placed[]): readonly Placed[] | number {
  const { uses } = new Occupied(route, pieces);
  const made = pieces.map((piece) => [...piece.made]);
  for (const station of uses.all) {
    // Only whoever shares a station can lean on another.
    for (const use of [...station]) {
      uses.remove(use);
      const stands = uses.stands(use.task, use.minute);
      const keeps = stands && uses.fitsBefore(use.task, use.minute, false);
      if (!keeps && !use.made && !roomToMake(route, tables, pieces, made, use)) return use.piece;
      const settled = { ...use, made: !keeps };
      (made[use.piece] as boolean[])[use.task] = settled.made;
      uses.add(settled);
    }
  }
  return pieces.map((piece, index) => ({ ...piece, made: made[index] as boolean[] }));
}

/** Whether a set-up can be made directly before its task with all others where they are. */
function roomToMake(
  { circle }: Route,
  tables: ApartTables,
  pieces: readonly Placed[],
  made: readonly (readonly boolean[])[],
  { task, minute, piece }: { task: number; minute: number; piece: number },
): boolean {
  const { minutes = 0 } = circle.setUps[circle.tasks[task]?.setUp ?? -1] ?? {};
  const session = circle.sessions.find(({ closes }) => closes > minute);
  if (session === undefined || minute - minutes < session.opens || circle.hands > 1) return false;
  return pieces.every(({ starts }, other) =>
    starts.every((start, at) => {
      if (other === piece && at === task) return true;
      const there = tables.made(at, task);
      if (there < 0) return true;
      const after = mod(minute - start, circle.period);
      const back = made[other]?.[at] === true ? tables.made(task, at) : tables.standing(task, at);
      return after >= there && circle.period - after >= back;
    }),
  );
}
