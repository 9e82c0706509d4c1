import type { Figure, WeekReview, WindowRecord } from "../pace/week-review.ts";
import { instantOf } from "../time/civil.ts";
import { plainText } from "./plain-text.ts";
import { sayCount, sayTags } from "./say-list.ts";
import { sayBenchTime, sayClock, sayFullDay } from "./say-time.ts";
import type { Speech } from "./speech.ts";
import { fitTo, widthOf } from "./width.ts";

/** Steps shown one by one; the longest first. */
const STEPS_SHOWN = 12;
/** Notes shown, the newest. */
const NOTES_SHOWN = 8;

/** The review of a week, a line each, with the pieces behind the figures. */
export function sayWeek(review: WeekReview, speech: Speech): string[] {
  return [
    `${review.week}, ${sayFullDay(review.start)} to ${sayFullDay(review.end)}${sayHowFar(review, speech)}`,
    `  ${sayAgainstAim(review)}`,
    `  tagged ${sayFigure(review.tagged)}, scrapped ${sayFigure(review.scrapped)}`,
    `  mended ${sayFigure(review.mended)}${review.mended.count === 0 ? "" : `, ${sayBenchTime(review.mended.minutes)}`}, sent back by a test ${sayFigure(review.sentBack)}`,
    ...sayHours(review),
    ...sayDaysOut(review),
    ...sayWindows(review, speech),
    ...sayOverrides(review, speech),
    ...sayNotes(review, speech),
    ...saySteps(review),
    "",
    ...sayChart(review),
  ].map(plainText);
}

function sayHowFar({ running, start }: WeekReview, speech: Speech): string {
  if (!running) return "";
  return instantOf(speech.zone, start, 0) > speech.now ? ", not begun" : ", so far";
}

function sayAgainstAim({ finished, aim }: WeekReview): string {
  const hoped = aim.finishedPerWeek === null ? "" : `, hoped ${aim.finishedPerWeek}`;
  const out = `; out ${aim.outNow.count}${aim.out === null ? "" : ` of at most ${aim.out}`}`;
  return `finished ${sayFigure(finished)}${hoped}${out}`;
}

/** `2 (4 and 5)`, `none` */
function sayFigure({ count, tags }: Figure): string {
  return count === 0 ? "none" : `${count} (${sayTags(tags)})`;
}

/** Hands-on against open hours, and what of it is not known or only guessed: a figure must not look surer than it is. */
function sayHours({ handsOn, running }: WeekReview): string[] {
  const share = handsOn.open === 0 ? "" : `, ${Math.round((100 * handsOn.minutes) / handsOn.open)} %`;
  const left = running ? `; bench left this week ${sayBenchTime(handsOn.left)}` : "";
  const lines = [
    `  hands-on ${sayBenchTime(handsOn.minutes)} of ${sayBenchTime(handsOn.open)} open${share}${left}`,
  ];
  if (handsOn.unknown.count > 0)
    lines.push(`  not in it: how long it took was not seen ${sayFigure(handsOn.unknown)}`);
  const { halfDone } = handsOn;
  if (halfDone.count > 0)
    lines.push(`  not yet in it: half-done ${sayFigure(halfDone)}, ${sayBenchTime(halfDone.minutes)} so far`);
  if (handsOn.guessed.count > 0) lines.push(`  guessed in it: hung as usual ${sayFigure(handsOn.guessed)}`);
  return lines;
}

/** The middle of the days the finished pieces were out, and how much of that they only hung. */
function sayDaysOut({ daysOut: { median, hanging, tags } }: WeekReview): string[] {
  if (median === null) return [];
  const share = hanging === null ? "" : `, ${Math.round(hanging * 100)} % of it hanging`;
  return [`  out ${median.toFixed(1)} days, middle of ${sayCount(tags.length, "piece")}${share}`];
}

/** Windows kept and missed, each missed one with its piece and what it cost. */
function sayWindows({ windows: { kept, missed } }: WeekReview, speech: Speech): string[] {
  const cost = missed.count === 0 ? "" : `, which cost ${sayBenchTime(missed.minutes)}`;
  return [
    `  windows kept ${sayFigure(kept)}, missed ${sayFigure(missed)}${cost}`,
    ...missed.windows.map((record) => `    ${sayMissed(record, speech)}`),
  ];
}

function sayMissed({ tag, laid, next, shut, taken, minutes }: WindowRecord, speech: Speech): string {
  const then = taken === null ? "not gone on with yet" : `gone on with ${sayClock(taken, speech)}`;
  return `${tag}: ${next} on ${laid} shut ${sayClock(shut, speech)}, ${then}, ${sayBenchTime(minutes)} of preparation`;
}

/** Where the maker went on although advised to wait, with the reason given then. */
function sayOverrides({ overrides }: WeekReview, speech: Speech): string[] {
  return overrides.map(
    ({ at, tags, what, over, reason }) =>
      `  went on although ${over}: ${[sayTags(tags), what].filter((part) => part !== "").join(" ")} ${sayClock(at, speech)}, "${reason}"`,
  );
}

/** What was noted, the newest notes where there are many. */
function sayNotes({ notes }: WeekReview, speech: Speech): string[] {
  const shown = notes.slice(-NOTES_SHOWN);
  const earlier = notes.length - shown.length;
  return [
    ...(earlier === 0 ? [] : [`  noted ${sayCount(earlier, "time")} before, week --json has all`]),
    ...shown.map(({ at, tags, text }) => {
      const of = tags.length === 0 ? "" : `${sayTags(tags)} `;
      return `  noted ${of}${sayClock(at, speech)}, "${text}"`;
    }),
  ];
}

/** Steps as worked against their estimates, the most time first. */
function saySteps({ steps }: WeekReview): string[] {
  if (steps.length === 0) return [];
  const shown = [...steps].sort((a, b) => b.total - a.total).slice(0, STEPS_SHOWN);
  const width = Math.max(...shown.map(({ step }) => widthOf(plainText(step))));
  return [
    "  steps, against their estimate",
    ...shown.map(({ step, times, minutes, estimate, total, estimated }) => {
      const off = Math.round(total - estimated);
      const against =
        off === 0 ? "as estimated" : `${sayBenchTime(Math.abs(off))} ${off > 0 ? "more" : "less"} in all`;
      return `    ${fitTo(plainText(step), width)}  ${String(times).padStart(3)} x ${sayBenchTime(minutes)}, estimate ${sayBenchTime(estimate)}, ${against}`;
    }),
  ];
}

/** Finished in each of the last eight weeks, a mark a piece. */
function sayChart({ lastWeeks }: WeekReview): string[] {
  return [
    "  finished in the last eight weeks",
    ...lastWeeks.map(
      ({ week, count }) =>
        `    ${week.slice(-3)}  ${"#".repeat(Math.min(count, 50))}${count === 0 ? "" : " "}${count}`,
    ),
  ];
}
