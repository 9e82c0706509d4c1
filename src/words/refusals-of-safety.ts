import type { Instant } from "../time/instant.ts";
import { sayBecause } from "./say-hold.ts";
import { sayInThisAir } from "./say-in-this-air.ts";
import { sayList, sayTags } from "./say-list.ts";
import type { Refusals } from "./say-refusal.ts";
import { sayClock } from "./say-time.ts";

/** It could be done, but is not fit to be started now. */
export const REFUSALS_OF_SAFETY: Refusals<"held" | "no rotation in this air" | "read the caution"> = {
  held: ({ tags, step, holds, until }, speech) => {
    // What it is kept apart from is a thing, what else holds it is a state of things.
    const things = holds.filter(({ code }) => code === "keep apart");
    const tillOf = (moment: Instant | null) => (moment === null ? "" : ` till ${sayClock(moment, speech)}`);
    // With no end to the whole, what has one tells it itself.
    const by = sayList(things.map((hold) => `${hold.because}${until === null ? tillOf(hold.until) : ""}`));
    const as = sayList(
      holds.filter((hold) => !things.includes(hold)).map((hold) => sayBecause(hold, speech)),
    );
    const because = `${by === "" ? "" : ` by ${by}`}${as === "" ? "" : `,${by === "" ? "" : " and"} as ${as}`}`;
    const till = tillOf(until);
    const remedies = [...new Set(holds.flatMap((hold) => hold.remedy ?? []))];
    const help = remedies.length > 0 ? sayList(remedies) : "wait";
    return `${`${sayTags(tags)} ${step}`.trim()} is held${till}${because}: ${help}, or go on anyway with a reason`;
  },
  "no rotation in this air": ({ process, why }, speech) => `${process}: ${sayInThisAir(why, speech)}`,
  "read the caution": ({ cautions, step, tags }) =>
    `${`${sayTags(tags)} ${step}`.trim()} asks to read ${sayList(cautions.map((name) => `"${name}"`))} first: read and tick`,
};
