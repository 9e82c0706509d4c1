import type { Emission } from "./coat.ts";
import { TIMED_STAGES } from "./coat.ts";
import type { CoatFields, WrittenWindow } from "./coat-schema.ts";
import type { LooseFields } from "./loose-fields.ts";
import { nearestWord } from "./nearest.ts";
import { type Finding, showValue } from "./problem.ts";

/** What the fields of a coat say against each other. */
export function checkCoat(coat: LooseFields<CoatFields>, cautions?: readonly string[]): Finding[] {
  const { fields } = coat;
  const preparations = (fields.windows ?? []).flatMap(({ first }, index) =>
    first === null ? [] : [{ first, path: ["windows", index, "first"] }],
  );
  return [
    ...checkLimits(coat),
    ...checkStages(coat),
    ...checkWindows(coat),
    ...checkOpening(coat),
    ...checkStanding(fields.gives_off, []),
    ...checkCautions(fields.cautions, [], cautions),
    ...preparations.flatMap(({ first, path }) => [
      ...checkStanding(first.givesOff, path),
      ...checkCautions(first.cautions, path, cautions),
    ]),
  ];
}

function checkLimits({ fields: { lowest, highest } }: LooseFields<CoatFields>): Finding[] {
  if (lowest === undefined || highest === undefined || lowest < highest) return [];
  const what = "its highest temperature is not above its lowest";
  return [{ path: ["highest"], what, expected: "write the warmer one as highest" }];
}

/** A coat that is tack-free before it is dust-free is a slip of the key. */
function checkStages({ fields }: LooseFields<CoatFields>): Finding[] {
  const named = TIMED_STAGES.flatMap((stage) => {
    const minutes = fields.stages?.[stage];
    return minutes === undefined ? [] : [{ stage, minutes }];
  });
  return named.flatMap(({ stage, minutes }, index) => {
    const before = named[index - 1];
    if (before === undefined || before.minutes <= minutes) return [];
    const expected = `write a time of ${before.stage} or later, for it comes after`;
    return [{ path: ["stages", stage], what: `${stage} comes sooner than ${before.stage}`, expected }];
  });
}

function checkWindows({ fields, bad }: LooseFields<CoatFields>): Finding[] {
  const windows = fields.windows ?? [];
  return windows.flatMap((window, index) => {
    const path = ["windows", index];
    const opens = opensAt(window, fields);
    if (opens === undefined) return bad.has("stages") ? [] : [unnamedStage(path, String(window.opens))];
    if (window.shuts !== null && window.shuts <= opens) {
      return [{ path, what: "the window shuts before it opens", expected: "write the earlier time first" }];
    }
    const before = windows[index - 1];
    if (before === undefined) return [];
    if (before.shuts === null) {
      const expected = "let that one shut, or take this one out";
      return [{ path, what: "a window stands after one that never shuts", expected }];
    }
    if (opens >= before.shuts) return [];
    return [
      {
        path,
        what: "the window opens before the one above it has shut",
        expected: "write windows in the order of time, none over another",
      },
    ];
  });
}

/** Minutes to the opening; undefined: a stage of which no time is known. A flash-off is the coat's own here. */
function opensAt({ opens }: WrittenWindow, fields: Partial<CoatFields>): number | undefined {
  if (typeof opens === "number") return opens;
  return opens === "flash-off" ? (fields.flash_off ?? 0) : fields.stages?.[opens];
}

function unnamedStage(path: Finding["path"], stage: string): Finding {
  return {
    path,
    what: `the window opens at ${stage}, of which no time is given`,
    expected: `write ${stage} under "stages"`,
  };
}

/** Something must say when the next coat may go on. */
function checkOpening({ fields, bad }: LooseFields<CoatFields>): Finding[] {
  if (bad.has("windows") || bad.has("stages") || fields.feel_first === true) return [];
  if ((fields.windows ?? []).length > 0 || fields.stages?.["dry-hard"] !== undefined) return [];
  const what = "nothing says when the next coat may go on";
  return [{ path: [], what, expected: 'write "windows", or dry-hard under "stages"' }];
}

/** A coat or a scuff has no set-up of its own: the step has. */
function checkStanding(emissions: readonly Emission[] | undefined, path: Finding["path"]): Finding[] {
  return (emissions ?? [])
    .filter(({ lasts }) => lasts === "while set up")
    .map(({ what }) => ({
      path: [...path, "gives_off", what],
      what: `${what} is given off "while set up", but there is no set-up`,
      expected: "write for how long after the work, as 40 min",
    }));
}

/** A caution with a slip in its name would never be shown. Not checked where no names are known. */
export function checkCautions(
  names: readonly string[] | undefined,
  path: Finding["path"],
  known?: readonly string[],
): Finding[] {
  if (known === undefined) return [];
  return (names ?? []).flatMap((name, index) => {
    if (known.includes(name)) return [];
    const nearest = nearestWord(name, known);
    const expected = nearest === null ? `write one of ${known.join(", ")}` : `did you mean ${nearest}?`;
    return [
      { path: [...path, "cautions", index], what: `no caution is called ${showValue(name)}`, expected },
    ];
  });
}
