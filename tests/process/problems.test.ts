import { describe, expect, test } from "vitest";
import { sayProblem } from "../../src/process/problem.ts";
import { readCoat } from "../../src/process/read-coat.ts";
import { readProcess } from "../../src/process/read-process.ts";
import { readCautions, readKeepApart } from "../../src/process/read-rules.ts";
import { type Told, tellCoat, tellProcess } from "./marked-files.ts";
import { coats, unwrap } from "./shipped-files.ts";

/** One problem alone, at the mark. */
function expectOnly({ problems, marked }: Told, what: string): void {
  expect(problems).toHaveLength(1);
  expect(problems[0]).toContain(`a.yaml:${marked} ${what}`);
}

const seal = "  - { step: seal, coat: sanding sealer, hands_on: 5 min }";

describe("everything wrong with a process is told at once, each at its line and column", () => {
  test("type errors, unknown words, cross-checks and repeated words together, in the order of lines", () => {
    expect(
      tellProcess(
        "  - step: shape",
        "    hand_on: 40 min", //                 line 4, column 5
        "  - step: seal",
        "    coat: sandign sealer", //            line 6, column 11
        "    hands_on: 6", //                     line 7, column 15
        "    hands_on: 6 min", //                 line 8, column 5
        "    after: [shpae]", //                  line 9, column 13
        "    gives_off: { dsut: 20 min }", //     line 10, column 18
      ).problems,
    ).toEqual([
      'a.yaml:3:5 "hands_on" is missing; write hands-on time, as 6 min, 4..6 min or 5..8..12 min',
      'a.yaml:4:5 "hand_on" is not known here; did you mean hands_on?',
      'a.yaml:6:11 no coat is called "sandign sealer"; did you mean sanding sealer?',
      'a.yaml:7:15 "hands_on" says 6; write hands-on time, as 6 min, 4..6 min or 5..8..12 min',
      "a.yaml:8:5 a word is said twice; say it once",
      'a.yaml:9:13 no step is called "shpae"; did you mean shape?',
      'a.yaml:10:18 "dsut" is not known here; did you mean dust?',
    ]);
  });
});

describe("a step that cannot be is refused where it says so", () => {
  test.each([
    [
      '"may_stop" is said of a step that lays a coat; take it out: a coat begun is finished',
      ["  - { step: a, coat: sanding sealer, hands_on: 5 min, may_stop: §true }"],
    ],
    ['"passes" are those of the scheme, but no coat is named', ["  - { step: a, passes: §scheme }"]],
    [
      "it waits for dry-hard, but no coat comes before",
      ["  - { step: a, hands_on: 5 min, waits_for: §dry-hard }"],
    ],
    [
      'it waits for set-to-touch, of which "sanding sealer" gives no time',
      [seal, "  - { step: b, hands_on: 5 min, waits_for: §set-to-touch }"],
    ],
    [
      'it hangs until set-to-touch, of which "sanding sealer" gives no time',
      ["  - { step: a, coat: sanding sealer, hands_on: 5 min, place: rack, until: §set-to-touch }"],
    ],
    [
      '"until" is said, but no place',
      ["  - { step: a, coat: sanding sealer, hands_on: 5 min, until: §dry-hard }"],
    ],
    ["nothing says how long it hangs", ["  - { step: a, hands_on: 5 min, place: §rack }"]],
    [
      'a step above is called "A", too',
      ["  - { step: a, hands_on: 5 min }", "  - { step: §A, hands_on: 5 min }"],
    ],
    ['"a" comes after itself', ["  - { step: a, hands_on: 5 min, after: §[a] }"]],
    [
      '"a", "b" each come after the other',
      ["  - { step: a, hands_on: 5 min, after: §[b] }", "  - { step: b, hands_on: 5 min, after: [a] }"],
    ],
    ["no answer goes on", [seal, "  - { step: b, hands_on: 5 min, result: §{ bad: seal } }"]],
    [
      'the answer "bad" leads to "b", which does not come before',
      ["  - { step: a, hands_on: 5 min, result: { ok: on, bad: §b } }", "  - { step: b, hands_on: 5 min }"],
    ],
    [
      'heat is given off "while set up", but the step has no set-up',
      ["  - { step: a, hands_on: 5 min, gives_off: { heat: §while set up } }"],
    ],
    [
      'no caution is called "molten led"; did you mean molten lead?',
      ["  - { step: a, hands_on: 5 min, cautions: [§molten led] }"],
    ],
    [
      '"melt" takes or keeps otherwise than in a step above',
      [
        "  - { step: a, hands_on: 5 min, set_up: { do: melt, takes: 20 min, keeps: 45 min from last use } }",
        "  - { step: b, hands_on: 5 min, set_up: §{ do: melt, takes: 25 min, keeps: 45 min from last use } }",
      ],
    ],
    [
      '"do" has brackets that mean nothing; write {colour}',
      [
        '  - { step: a, hands_on: 5 min, set_up: { do: §"load {color}", takes: 5 min, keeps: until another load } }',
      ],
    ],
  ])("%s", (what, steps) => {
    expectOnly(tellProcess(...steps), what);
  });
});

describe("a coat that cannot be is refused where it says so", () => {
  test.each([
    ["tack-free comes sooner than dust-free", ["stages: { dust-free: 2 h, tack-free: §1 h, dry-hard: 3 h }"]],
    [
      "its highest temperature is not above its lowest",
      ["windows: [from 1 h]", "lowest: 10 °C", "highest: §10 °C"],
    ],
    ['"dampest" says "120 %"; write a relative humidity', ["windows: [from 1 h]", "dampest: §120 %"]],
    ["the window opens before the one above it has shut", ["windows: [4 h .. 24 h, §from 12 h]"]],
    ["a window stands after one that never shuts", ["windows: [4 h .., §from 12 h]"]],
    ["the window opens at tack-free, of which no time is given", ["windows: [§tack-free .. 24 h]"]],
    ["the window shuts before it opens", ["stages: { dry-hard: 30 h }", "windows: [§dry-hard .. 24 h]"]],
    [
      'solvent vapour is given off "while set up", but there is no set-up',
      ["windows: [from 1 h]", "gives_off: { solvent vapour: §while set up }"],
    ],
    ['"wet" is not known here', ["windows: [from 1 h]", "stages: { §wet: 1 min }"]],
    ["a word is said twice", ["windows: [from 1 h]", "§cures_by: magic"]],
    ['"feel_first" says "yes"; write true or false', ["windows: [from 1 h]", "feel_first: §yes"]],
  ])("%s", (what, lines) => {
    expectOnly(tellCoat(...lines), what);
  });

  test("nothing says when the next coat may go on: no window, no dry-hard", () => {
    expect(tellCoat("stages: { tack-free: 1 h }").problems).toEqual([
      'a.yaml:1:1 nothing says when the next coat may go on; write "windows", or dry-hard under "stages"',
    ]);
    // A coat that only a finger opens need not.
    expect(tellCoat("feel_first: true").problems).toEqual([]);
  });
});

describe("what YAML can hide is refused where it stands", () => {
  test.each([
    ["a name (& or *) stands for a value written elsewhere", "  - { step: &x §a, hands_on: 5 min }"],
    [
      "a name (& or *) stands for a value written elsewhere",
      "  - &x §{ step: a, hands_on: 5 min, sheet: *x }",
    ],
    ["a value has a ! tag before it", "  - { step: !!str §a, hands_on: 5 min }"],
    ["a value has a ! tag before it", "  - !!map §{ step: a, hands_on: 5 min }"],
    ["what stands before a colon is not a plain word", "  - { step: a, hands_on: 5 min, §[b]: c }"],
    [
      "what stands before a colon is not a plain word",
      "  - { step: a, hands_on: 5 min, sheet: { §__proto__: b } }",
    ],
    ['"50 %" is not known here', "  - { step: a, hands_on: 5 min, set_up: { at: 21 °C, §50 % } }"],
    ['"step" says "a?[31m"', '  - { step: §"a\\e[31m", hands_on: 5 min }'],
    ['"step" says "a?b"', '  - { step: §"a\\u202eb", hands_on: 5 min }'],
    ['"place" says nothing', "  - { step: a, hands_on: 5 min, place: §#14\n    }"],
    ["a second document begins", "  - { step: a, hands_on: 5 min }\n§---\nprocess: b"],
  ])("%s: %s", (what, line) => {
    const { problems, marked } = tellProcess(line);
    expect(problems.join("\n")).toContain(`a.yaml:${marked} ${what}`);
  });

  test("the %YAML 1.1 line, under which yes is true", () => {
    const read = readCoat("%YAML 1.1\n---\ncoat: x\n", { file: "c.yaml" });
    expect("problems" in read && read.problems.map(sayProblem)).toContain(
      "c.yaml:1:1 the file begins with a % line; leave that line out",
    );
  });

  test.each([
    ["hyphens", "- ".repeat(20_000)],
    ["brackets", "[".repeat(20_000)],
    ["brackets on their lines", "[\n".repeat(20_000)],
    ["question marks", "? ".repeat(20_000)],
    ["colons", "a: ".repeat(20_000)],
    ["indent", Array.from({ length: 300 }, (_, depth) => `${" ".repeat(depth)}a:`).join("\n")],
    ["carriage returns", "- \r".repeat(20_000)],
    ["sheer length", `# ${"x".repeat(70_000)}`],
  ])("nesting by %s, which can end the program past any catching", (_name, text) => {
    const read = readProcess(text, { file: "a.yaml", coats });
    expect("problems" in read && read.problems.map(sayProblem)).toEqual([
      expect.stringMatching(/nested too deep; write it flatter|over 64000 letters/),
    ]);
  });
});

describe("safety files", () => {
  test("a caution twice, without what to do, and a pair of one are refused", () => {
    const caution = "  - { caution: lead, line: l, is: i, do: [], never: [n], sources: [s] }";
    const read = readCautions(`closing: c\ncautions:\n${caution}\n${caution}\n`, { file: "k.yaml" });
    expect("problems" in read && read.problems.map(sayProblem)).toEqual([
      'k.yaml:3:42 "do" says a list; write at least one of things to do',
      'k.yaml:4:16 a caution above is called "lead", too; keep one of them',
      'k.yaml:4:42 "do" says a list; write at least one of things to do',
    ]);
    const pair = readKeepApart("keep_apart:\n  - { these: [heat], because: b, source: s }\n", {
      file: "k.yaml",
    });
    expect("problems" in pair && pair.problems.map(sayProblem)).toEqual([
      'k.yaml:2:14 "these" says a list; write the two that must not meet, as [solvent vapour, heat]',
    ]);
  });
});

describe("what may be left out", () => {
  test("a step is at the bench, after the one above it; a coat hangs until dry-hard; other work as long as its wait", () => {
    const { definition } = unwrap(
      readProcess(
        [
          "process: test",
          "steps:",
          "  - { step: seal, coat: sanding sealer, hands_on: 5 min, place: rack }",
          "  - { step: glue, hands_on: 5 min, wait: 1 h, place: rack }",
          "  - { step: wire, hands_on: 5 min, after: [] }",
          "  - { step: paint, passes: scheme, coat: airbrush acrylic, after: [glue, wire] }",
        ].join("\n"),
        { file: "a.yaml", coats },
      ),
    );
    const [first, glue, wire, paint] = definition.steps;
    expect(first).toMatchObject({ station: "bench", after: [], until: { stage: "dry-hard" } });
    expect(glue).toMatchObject({ after: ["seal"], until: null, wait: 60 });
    expect(wire?.after).toEqual([]);
    expect(paint).toMatchObject({ after: ["glue", "wire"], handsOn: { low: 5, likely: 10, high: 15 } });
    expect(definition.piece).toBe("piece");
    expect(Object.keys(definition.coats)).toEqual(["sanding sealer", "airbrush acrylic"]);
  });
});
