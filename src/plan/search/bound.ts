import type { Minutes } from "../../time/instant.ts";
import type { Bench, BenchPiece } from "./bench.ts";
import { pieceCost } from "./place-task.ts";

/**
 * What any plan costs at least, for a bench that has just begun: no set-up, preparation or mend, and the dearer of
 *
 * - every piece alone: release, waits, work and closed hours along its longest path;
 * - the hands' load: pieces in one row by which hands work them, whenever the bench is open, broken off at will. By
 *   the shortest remaining work first as many pieces as possible are through by any moment (L. Schrage, A proof of the
 *   optimality of the shortest remaining processing time discipline, Operations Research 16, 1968), so the k-th finish
 *   of a plan is no sooner than the k-th here, nor than the k-th of the paths. Lateness is least if what is finished
 *   first is due first, whatever piece that is, and counts at the least weight.
 */
export function lowerBound(bench: Bench): number {
  const paths = bench.pieces.reduce((sum, piece) => sum + pieceCost(bench, piece, piece.leastFinish), 0);
  return Math.max(paths, loadBound(bench));
}

function loadBound(bench: Bench): number {
  const { prices, horizon } = bench;
  const through = bench.pieces.filter(({ left, leastFinish }) => left > 0 && leastFinish < horizon);
  const others = bench.pieces.filter((piece) => !through.includes(piece));
  const soonest = finishes(bench, through);
  const paths = sorted(through.map(({ leastFinish }) => leastFinish));
  const dues = sorted(through.map(({ due }) => due));
  const least = Math.min(...through.map(({ weight }) => weight));
  let flow = 0;
  let late = 0;
  for (const [place, path] of paths.entries()) {
    const finish = Math.max(path, soonest[place] ?? 0);
    flow += finish;
    late += Math.max(0, finish - (dues[place] ?? finish));
  }
  for (const { release } of through) flow -= release;
  const alone = through.reduce(
    (sum, { weight, due, leastFinish }) => sum + weight * Math.max(0, leastFinish - due),
    0,
  );
  const rest = others.reduce((sum, piece) => sum + pieceCost(bench, piece, piece.leastFinish), 0);
  const lateness = Math.max(alone, late === 0 ? 0 : least * late);
  return rest + prices.late * lateness + prices.flow * Math.max(0, flow);
}

function sorted(minutes: readonly Minutes[]): Minutes[] {
  return minutes.toSorted((a, b) => a - b);
}

/** Finishes by the shortest remaining work first, in rising order: each the end of hands-on and the piece's cure, no less. */
function finishes(bench: Bench, pieces: readonly BenchPiece[]): Minutes[] {
  const waiting = pieces
    .map(({ release, tasks, cure }) => ({
      release,
      cure,
      work:
        tasks.reduce((sum, { minutes, running }) => sum + (running ? 0 : minutes), 0) / bench.hands.length,
    }))
    .sort((a, b) => b.release - a.release);
  const ready: { cure: Minutes; work: Minutes }[] = [];
  const done: Minutes[] = [];
  for (let session = 0; waiting.length + ready.length > 0; session++) {
    const closes = Math.min(bench.horizon, bench.calendar.closing(session));
    let now = Math.max(0, bench.calendar.opening(session));
    while (now < closes && waiting.length + ready.length > 0) {
      for (let next = waiting.at(-1); next !== undefined && next.release <= now; next = waiting.at(-1)) {
        ready.push(next);
        waiting.pop();
      }
      ready.sort((a, b) => b.work - a.work);
      const until = Math.min(closes, waiting.at(-1)?.release ?? closes);
      const shortest = ready.at(-1);
      const spent = Math.min(until - now, shortest?.work ?? until - now);
      now += spent;
      if (shortest === undefined) continue;
      shortest.work -= spent;
      if (shortest.work > 0) continue;
      ready.pop();
      done.push(Math.floor(now));
    }
    if (bench.calendar.opening(session + 1) >= bench.horizon) break;
  }
  // Cures may overtake one another: the least of them is sure for each.
  const cure = Math.min(...pieces.map((piece) => piece.cure));
  return sorted(done.map((end) => end + cure));
}
