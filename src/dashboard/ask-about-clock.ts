import { sayClockDoubt } from "../words/say-clock-doubt.ts";
import { sayClock, sayWait } from "../words/say-time.ts";
import type { Speech } from "../words/speech.ts";
import type { ClockDoubt } from "../workshop/clock-watch.ts";
import type { Workshop } from "../workshop/workshop.ts";
import type { Choice, Overlay } from "./state.ts";

/** Setting nothing right stands beside setting it right: no key alone, least of all Enter, changes what was written. */
const LEAVE: Readonly<Record<ClockDoubt["kind"], string>> = {
  behind: "r  leave what was written: the clock is wrong now",
  jumped: "r  it is right now, and what was written stands",
  back: "r  leave what was written meanwhile",
};

/**
 * Asks which of the clock's times were right: those it shows now, those it showed before, or both (the machine slept in
 * a way its steady clock did not see). What a wrong clock wrote is offered to be set right, told as what and since when.
 */
export async function askAboutClock(doubt: ClockDoubt, workshop: Workshop, speech: Speech): Promise<Overlay> {
  const { kind, minutes, wrote } = doubt;
  const wrong = sayWait(Math.abs(minutes));
  const settle = { do: "clock is right" } as const;
  const setRight = async (): Promise<Choice> => {
    const since = wrote?.since ?? null;
    const until = wrote?.until ?? null;
    const late = wrote?.minutes ?? minutes;
    const which = since === null ? "ahead of now" : await sayWritten(since, until, workshop, speech);
    const act = { act: "clock" as const, at: speech.now, minutes: late, since, until };
    return {
      key: "w",
      label: `w  the clock was wrong by ${wrong}: set what was written ${which} ${late < 0 ? "forward" : "back"}`,
      effects: [settle, { do: "perform", request: act }],
    };
  };
  const right: Choice = { key: "r", label: LEAVE[kind], effects: kind === "behind" ? [] : [settle] };
  const wasWrong = kind === "behind" || wrote !== null ? [await setRight()] : [];
  return {
    is: "choose",
    title: `${sayClockDoubt(doubt)}.`,
    lines: kind === "back" ? [] : ["If it is wrong now: set the machine's clock, dryline sees it."],
    choices: [...wasWrong, right],
  };
}

/** `since 18:02 (3 acts)` */
async function sayWritten(
  since: number,
  until: number | null,
  workshop: Workshop,
  speech: Speech,
): Promise<string> {
  const { acts } = await workshop.shop();
  const written = acts.filter(({ act }) => act >= since && (until === null || act < until));
  const first = written[0]?.events[0];
  const from = first === undefined ? "since then" : `since ${sayClock(first.recorded, speech)}`;
  return `${from} (${written.length} ${written.length === 1 ? "act" : "acts"})`;
}
