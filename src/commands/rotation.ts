import { refuse } from "../acts/refuse.ts";
import type { Looking, Pace } from "../plan/rotation/rotation-answer.ts";
import { rotationOf } from "../plan/rotation/rotation-of.ts";
import type { ProcessDefinition } from "../process/definition.ts";
import { asIfInAir } from "../shop/hang-in-air.ts";
import type { WeeklyHours } from "../time/bench-hours.ts";
import { localTime } from "../time/civil.ts";
import { formatWeeklyHours } from "../time/format-hours.ts";
import { readWeeklyHours } from "../time/read-hours.ts";
import { weeklyOn } from "../time/sessions.ts";
import { matchIn } from "../words/match-in.ts";
import { readPace } from "../words/read-pace.ts";
import { sayAir } from "../words/say-air.ts";
import { sayLooking } from "../words/say-looking.ts";
import { sayNoRotation, sayRefusedPace, sayRotation, sayTooFewOut } from "../words/say-rotation.ts";
import type { Workshop } from "../workshop/workshop.ts";
import { type Answer, AS_OF, type Command } from "./command.ts";
import { type CommandWords, withoutStop } from "./command-words.ts";
import { readOtherAir } from "./read-other-air.ts";
import { rotationJson } from "./rotation-json.ts";

/**
 * Milliseconds of the processor after which a search goes with what it has, on a machine far too slow: it is limited by
 * rounds, and other programs beside it do not change its answer.
 */
const PATIENCE = 20_000;
/** A round of planning is as long as so many nodes of a rotation. */
const LOOKS_A_ROUND = 50;

/** The repeating timetable in which pieces of a process finish one after the other. */
export const rotation: Command = {
  usage: ["rotation [PROCESS]"],
  says: "how many to keep out, how quick that finishes them, and the day card for it",
  options: {
    pace: { value: "PACE", says: 'how many to finish: 1/day, 5/week, "1 every 2 days"' },
    out: { value: "N", says: "how many to keep out: the quickest pace with no more" },
    hours: { value: "HOURS", says: 'what if these were the hours of every week: "weekdays 18-21, Sat 9-16"' },
    air: { value: "AIR", says: "what if the air were this: 27C,45%" },
    ...AS_OF,
  },
  examples: [
    ['rotation "carved walker"', "the paces there are, and the usual one as a timetable"],
    ["rotation --pace 1/day", "of your usual process: the fewest out to finish one a day"],
    ['rotation "carved walker" --out 2', "the quickest pace with two out"],
    [
      'rotation "carved walker" --pace 3/week --hours "weekdays 18-21, Sat 9-16"',
      "three a week in other hours",
    ],
    ['rotation "carved walker" --air 27C,45%', "how many one a day would need out in such air"],
    ["rotation --json", "the same for a program"],
  ],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const at = words.moment("at", speech) ?? undefined;
    const pace = readAskedPace(words);
    const out = words.count("out");
    if (pace !== null && out !== null) words.problems.push("say --pace or --out, not both");
    const asked = readAskedHours(words);
    const air = readOtherAir(words);
    const present = await workshop.shop(undefined, at);
    const shop = air === null ? present : asIfInAir(present, air, at ?? speech.now);
    const context = await workshop.planContext(shop, at);
    const definition = await readDefinition(words, workshop, context.newPiece?.definition ?? null);
    if (words.problems.length > 0 || definition === null) return { problems: words.problems };
    const weekly = asked ?? weeklyOn(context.hours, localTime(context.zone, context.now).date);
    const { planRounds, thinking } = bench.context;
    const onLook = (looking: Looking) => thinking?.(sayLooking(definition.name, looking));
    const ask = { definition, weekly, pace, out, isOver: patience(planRounds), onLook };
    const answer = rotationOf(shop, context, ask);
    thinking?.(null);
    if ("because" in answer && (answer.because === "air" || answer.because === "never dries"))
      return refuse({ code: "no rotation in this air", process: definition.name, why: answer });
    if ("because" in answer) return { problems: [`${definition.name}: ${sayNoRotation(answer)}`] };
    const { timetable, table } = answer;
    const refused = timetable.is === "impossible" && (pace !== null || table.length === 0);
    if (refused) return { problems: sayRefusedPace(answer) };
    if (out !== null && timetable.is === "timetable" && timetable.out > out) {
      return { problems: [sayTooFewOut(answer, out)] };
    }
    const assumed = asked === null && shop.settings.hours === null ? " (assumed hours)" : "";
    const hours = `${formatWeeklyHours(weekly)}${assumed}`;
    const text = sayRotation(answer, hours, speech.clock24, bench.context.columns);
    if (air !== null) text.unshift(`In air of ${sayAir(air, speech)} (predicted):`);
    else if (shop.air.lines.size > 0) text.unshift("In the shop's own air as expected (predicted):");
    return { text, json: rotationJson(answer, formatWeeklyHours(weekly)) } satisfies Answer;
  },
};

/** Time, or looks at it where they are limited, after which a search is over. */
function patience(rounds = Number.POSITIVE_INFINITY): () => boolean {
  const begun = globalThis.process.cpuUsage();
  let looks = 0;
  let isLate = false;
  return () => {
    // Some looks are only microseconds apart, and so long does the clock take.
    if (looks % 16 === 0) isLate ||= globalThis.process.cpuUsage(begun).user > PATIENCE * 1_000;
    return isLate || looks++ > rounds * LOOKS_A_ROUND;
  };
}

function readAskedPace(words: CommandWords): Pace | null {
  const said = words.option("pace");
  if (said === null) return null;
  const read = readPace(said);
  if ("pace" in read) return read.pace;
  words.problems.push(`--pace ${read.problem}`);
  return null;
}

function readAskedHours(words: CommandWords): WeeklyHours | null {
  const said = words.option("hours");
  if (said === null) return null;
  const read = readWeeklyHours(said);
  if ("weekly" in read) return read.weekly;
  words.problems.push(`--hours ${withoutStop(read.problem)}`);
  return null;
}

/** The process named, else the one a new piece would be of. */
async function readDefinition(
  words: CommandWords,
  workshop: Workshop,
  usual: ProcessDefinition | null,
): Promise<ProcessDefinition | null> {
  const said = words.rest();
  if (said === null) {
    if (usual === null) words.problems.push('say which process: rotation "carved walker"');
    return usual;
  }
  const { processes } = await workshop.readLibrary();
  const found = matchIn("process", said, processes, ({ definition }) => definition.name);
  if ("found" in found) return found.found.definition;
  words.problems.push(found.problem);
  return null;
}
