import { MINUTE } from "../time/instant.ts";
import { plainText } from "../words/plain-text.ts";
import { sayColdAhead, sayShopAir } from "../words/say-air.ts";
import { sayDayAndClock, sayWait } from "../words/say-time.ts";
import { sayBench } from "../words/say-waiting.ts";
import { widthOf, wrapTo } from "../words/width.ts";
import type { Line } from "./line.ts";
import { line, span, spread } from "./line.ts";
import type { Facts } from "./state.ts";

/** Minutes before the bench shuts from which what still stands is told loudly. */
const LAST_CALL = 15;

/** Day and clock, the bench, and what is hot, mixed or loaded with its own short timer. */
export function headPanel(facts: Facts, columns: number): Line[] {
  const { answer, speech } = facts;
  const clock = sayDayAndClock(speech.now, speech);
  const bench = [sayBench(answer.bench, speech), ...sayShopAir(answer, speech)].join(", ");
  const oneLine = widthOf(clock) + widthOf(bench) + 4 <= columns;
  const lines: Line[] = oneLine
    ? [spread(span(` ${clock}`, "strong"), span(`${bench} `), columns)]
    : [line(` ${clock}`, "strong"), ...wrapTo(bench, columns - 2).map((text) => line(` ${text}`))];
  for (const cold of sayColdAhead(answer.cold, speech)) {
    for (const text of wrapTo(cold, columns - 2)) lines.push(line(` ${text}`, "soon"));
  }
  for (const row of answer.prepared) {
    const left = row.until === null ? null : Math.ceil((row.until - speech.now) / MINUTE);
    const timer =
      row.state === "getting ready"
        ? `ready in ${sayWait(Math.ceil((row.ready - speech.now) / MINUTE))}`
        : row.state === "all served"
          ? "has served all it can"
          : left === null
            ? "until another load"
            : left <= 0
              ? "kept too long"
              : `${sayWait(left)} left${row.keptByFile === undefined ? "" : " (predicted)"}`;
    const late = row.state === "kept too long" || (left !== null && left <= 5 && row.state === "ready");
    const said = plainText(` ${row.station}: ${row.setUp}, ${timer}`);
    lines.push(line(said, late ? "late" : "soon"));
  }
  const { closes, minutesLeft } = answer.bench;
  const standing = answer.prepared.filter((row) => row.putAwayMinutes > 0);
  if (closes !== null && standing.length > 0 && minutesLeft <= LAST_CALL + answer.bench.putAway) {
    const what = standing.map(({ setUp, station }) => `${setUp} at the ${station}`).join(", ");
    const said = plainText(` Before the bench shuts put away: ${what} (${sayWait(answer.bench.putAway)}).`);
    lines.push(line(said, "late"));
  }
  return lines;
}
