import { sayList, sayTags } from "./say-list.ts";
import type { Refusals } from "./say-refusal.ts";
import { sayClock } from "./say-time.ts";

/** The words name something that is not there, or say too little. */
export const REFUSALS_OF_WORDS: Refusals<
  | "no such tag"
  | "no such step"
  | "no such station"
  | "no such set-up"
  | "no such answer"
  | "no such act"
  | "several steps fit"
  | "in the future"
  | "unfit value"
  | "nothing changes"
> = {
  "no such tag": ({ tag, known }) =>
    known.length === 0
      ? `There is no ${tag}, and nothing is out: tag a piece first`
      : `There is no ${tag}: out ${known.length === 1 ? "is" : "are"} ${sayTags(known)}`,
  "no such step": ({ tag, step, nearest, steps }) =>
    nearest === null
      ? `${tag} has no step "${step}": it has ${sayList(steps)}`
      : `${tag} has no step "${step}": perhaps "${nearest}"`,
  "no such station": ({ station, stations }) =>
    stations.length === 0
      ? `There is no station "${station}": no piece that is out needs one`
      : `There is no station "${station}": there ${stations.length === 1 ? "is" : "are"} ${sayList(stations)}`,
  "no such set-up": ({ station, what, setUps }) =>
    setUps.length === 0
      ? `Nothing is set up at the ${station}: its work needs no "${what}"`
      : what === ""
        ? `several can be set up at the ${station}: say ${sayList(setUps, "or")}`
        : `"${what}" is not set up at the ${station}: say ${sayList(setUps, "or")}`,
  "no such answer": ({ step, answers }) =>
    answers.length === 0
      ? `${step} has no answers: hang it without one`
      : `${step} wants its answer: say ${sayList(answers, "or")}`,
  "no such act": ({ act }) =>
    `There is no act ${act} that stands: undo without a number takes back your last one`,
  "several steps fit": ({ tag, steps }) => `${tag} could go on with ${sayList(steps, "or")}: say which`,
  "in the future": ({ at, now }, speech) =>
    `${sayClock(at, speech)} has not come, it is ${sayClock(now, speech)}: say when it was`,
  "unfit value": ({ what, value, expected }) => `${what} cannot be "${value}": it takes ${expected}`,
  "nothing changes": ({ what }) => `Nothing would change, it is so already: ${what}`,
};
