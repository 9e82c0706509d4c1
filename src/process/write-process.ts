import { formatDuration } from "../time/duration.ts";
import { ASSUMED_PASS } from "./build-process.ts";
import type { ProcessDefinition } from "./definition.ts";
import { writeHandsOn } from "./hands-on-form.ts";
import { writeKeeps } from "./keeps-form.ts";
import type { SetUp, Step } from "./step.ts";
import { filled, filledList, writeGivesOff } from "./write-coat.ts";
import { writeYaml } from "./write-yaml.ts";

/**
 * A process as a file that, with its coats at hand, reads back to the same definition. What a file would leave out is
 * left out.
 */
export function writeProcess(definition: ProcessDefinition): string {
  return writeYaml({
    process: definition.name,
    piece: definition.piece,
    note: definition.note ?? undefined,
    steps: definition.steps.map((step, index) => writeStep(step, definition.steps[index - 1]?.name)),
  });
}

function writeStep(step: Step, above: string | undefined) {
  return {
    step: step.name,
    station: step.station === "bench" ? undefined : step.station,
    passes: step.passes === "scheme" ? step.passes : undefined,
    coat: step.coat ?? undefined,
    waits_for: step.waitsFor ?? undefined,
    hands_on: writeStepHandsOn(step),
    may_stop: step.mayStop || undefined,
    set_up: step.setUp === null ? undefined : writeSetUp(step.setUp),
    gives_off: writeGivesOff(step.givesOff),
    needs: filled(
      Object.fromEntries(step.needs.map(({ what, atMost, unit }) => [what, `at most ${atMost} ${unit}`])),
    ),
    ballast: writeBallast(step.ballast),
    wait: step.wait === 0 ? undefined : formatDuration(step.wait),
    place: step.place ?? undefined,
    ...writeUntil(step),
    after: writeAfter(step, above),
    look: filledList(step.look.map(formatDuration)),
    cautions: filledList(step.cautions),
    result: writeResult(step.result),
    sheet: filled(step.sheet),
  };
}

function writeStepHandsOn({ passes, handsOn }: Step): string | undefined {
  const assumed = passes === "scheme" && writeHandsOn(handsOn) === writeHandsOn(ASSUMED_PASS);
  return assumed ? undefined : writeHandsOn(handsOn);
}

function writeSetUp(setUp: SetUp) {
  return {
    do: setUp.do,
    takes: formatDuration(setUp.takes),
    keeps: writeKeeps(setUp.keeps),
    put_away: setUp.putAway === 0 ? undefined : formatDuration(setUp.putAway),
    cautions: filledList(setUp.cautions),
  };
}

function writeBallast(ballast: Step["ballast"]) {
  if (ballast === null) return undefined;
  const { holes, acrossMillimetres, deepMillimetres, grams, metal } = ballast;
  return {
    holes,
    across: `${acrossMillimetres} mm`,
    deep: deepMillimetres === null ? undefined : `${deepMillimetres} mm`,
    weight: grams == null ? undefined : `${grams} g`,
    metal: metal === undefined || metal === "lead" ? undefined : metal,
  };
}

/** A coat that hangs until dry-hard need not say so. */
function writeUntil({ until }: Step) {
  if (until === null) return {};
  if ("minutes" in until) return { for: formatDuration(until.minutes) };
  return until.stage === "dry-hard" ? {} : { until: until.stage };
}

/** A step after the one above it need not say so. */
function writeAfter(step: Step, above: string | undefined): readonly string[] | undefined {
  const plain = above === undefined ? [] : [above];
  return JSON.stringify(step.after) === JSON.stringify(plain) ? undefined : step.after;
}

function writeResult(result: Step["result"]) {
  if (result === null) return undefined;
  return Object.fromEntries(
    Object.entries(result).map(([answer, target]) => [answer, "goes" in target ? "on" : target.backTo]),
  );
}
