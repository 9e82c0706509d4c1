import type { ActRequest } from "../acts/request.ts";
import type { SchemePass } from "../journal/event.ts";
import type { Chance } from "../plan/chance.ts";
import type { NowAnswer, WorkRow } from "../plan/now-answer.ts";
import { aboutMinutes, oneOf } from "../simulate/noise.ts";
import type { Instant, Minutes } from "../time/instant.ts";
import { MINUTE } from "../time/instant.ts";
import type { Outcome, Workshop } from "./workshop.ts";

/** A clock that the script moves on by hand. */
export interface HandClock {
  time: Instant;
}

/** A set-up of so many minutes is begun by itself; a shorter one is part of the work. */
const OWN_WORK_FROM = 10;

const NAMES = ["smelt", "perch", "roach", "dace", "frog back", "craw", "two-tone", "moonlight"] as const;
const COLOURS = ["ochre", "bone", "olive", "pearl", "rust", "black"] as const;

/** Works one bench session the way `now` says, with a hand that is sometimes slow, till the clock reaches `end`. */
export async function playSession(
  workshop: Workshop,
  clock: HandClock,
  end: Instant,
  chance: Chance,
): Promise<void> {
  while (clock.time < end) {
    const answer = await workshop.whatNow();
    await measureWhereAsked(workshop, answer);
    const row = answer.work.find(
      ({ minutes, setUp }) => clock.time + (minutes + (setUp?.minutes ?? 0)) * MINUTE < end,
    );
    if (row === undefined) {
      const next = nextMoment(answer, clock.time);
      if (next === null || next >= end) break;
      clock.time = next;
    } else if (row.tags.length === 0) await tagOne(workshop, row, clock, chance);
    else if (!(await workRow(workshop, row, clock, chance))) clock.time += 5 * MINUTE;
  }
  await putEverythingAway(workshop, clock);
}

/** Takes a row in hand and hangs it after about its usual minutes. False: it was refused after all. */
async function workRow(workshop: Workshop, row: WorkRow, clock: HandClock, chance: Chance): Promise<boolean> {
  const { setUp, station } = row;
  if (setUp !== null && !setUp.standing && setUp.minutes >= OWN_WORK_FROM) {
    await reading(workshop, {
      act: "ready",
      at: clock.time,
      station,
      what: setUp.what,
      begun: null,
      beginning: true,
      anyway: null,
      ticked: [],
    });
    clock.time += setUp.minutes * MINUTE;
  } else if (setUp !== null && !setUp.standing) clock.time += setUp.minutes * MINUTE;
  const taken = await reading(workshop, {
    act: "take",
    at: clock.time,
    tags: row.tags,
    step: row.part === "step" ? row.step : null,
    colour: row.colour,
    anyway: null,
    ticked: [],
  });
  if ("refusal" in taken) return false;
  const usual = row.part === "preparation" ? prepared(row) : row.minutes;
  clock.time += aboutMinutes(usual, chance) * MINUTE;
  const hang: ActRequest = {
    act: "hang",
    at: clock.time,
    tags: row.tags,
    step: null,
    colour: null,
    flashOff: null,
    place: null,
    result: null,
    asUsual: false,
    anyway: null,
    ticked: [],
  };
  const hung = await reading(workshop, hang);
  if ("refusal" in hung && hung.refusal.code === "no such answer") {
    const [good = "", bad = good] = hung.refusal.answers;
    await reading(workshop, { ...hang, result: chance() < 0.12 ? bad : good });
  }
  return true;
}

function prepared(row: WorkRow): Minutes {
  return (row.preparation?.handsOn.likely ?? row.minutes) * row.tags.length;
}

async function tagOne(workshop: Workshop, row: WorkRow, clock: HandClock, chance: Chance): Promise<void> {
  const { processes } = await workshop.readLibrary();
  const process = processes.find(({ definition }) => definition.name === row.process);
  if (process === undefined) throw new Error(`no process ${row.process} to tag a piece of`);
  const pass = (): SchemePass => ({ colour: oneOf(COLOURS, chance), minutes: 6, flashOff: 5 });
  await workshop.perform({
    act: "tag",
    at: clock.time,
    process,
    count: 1,
    name: oneOf(NAMES, chance),
    scheme: chance() < 0.5 ? [pass()] : [pass(), pass()],
    due: null,
    price: 2800,
    for: null,
    hung: null,
  });
}

/** A meter is at hand: what a step wants to know of a piece is measured. */
async function measureWhereAsked(workshop: Workshop, answer: NowAnswer): Promise<void> {
  for (const { because, tags } of answer.held) {
    if (because.code !== "measure first") continue;
    await workshop.perform({
      act: "measure",
      at: workshop.now(),
      tags,
      what: "wood moisture",
      value: 8,
      unit: "%",
    });
  }
}

async function putEverythingAway(workshop: Workshop, clock: HandClock): Promise<void> {
  for (const { station, putAwayMinutes } of (await workshop.whatNow()).prepared) {
    await workshop.perform({ act: "put away", at: clock.time, station });
    clock.time += putAwayMinutes * MINUTE;
  }
}

/** Does an act, reading and ticking the cautions it asks for. */
async function reading(workshop: Workshop, request: ActRequest): Promise<Outcome> {
  const outcome = await workshop.perform(request);
  if (!("refusal" in outcome) || outcome.refusal.code !== "read the caution" || !("ticked" in request))
    return outcome;
  return workshop.perform({ ...request, ticked: outcome.refusal.cautions });
}

/** When something may open or a hold ends; null: nothing more this bench session. */
function nextMoment({ waiting, held }: NowAnswer, now: Instant): Instant | null {
  const moments = [...waiting.map(({ opens }) => opens), ...held.map(({ until }) => until)];
  const coming = moments.filter((moment): moment is Instant => moment !== null && moment > now);
  return coming.length === 0 ? null : Math.min(...coming);
}
