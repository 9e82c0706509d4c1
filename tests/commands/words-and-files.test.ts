import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { COMMAND_WORDS, COMMANDS } from "../../src/commands/command-table.ts";
import type { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { benchAfter, done, refused, typeAtTerminal } from "./type-lines.ts";

let bench: BenchInAFolder;

beforeEach(async () => {
  bench = await benchAfter("Mon 17:50", ["settings zone Europe/Dublin"]);
});
afterEach(() => bench.remove());

describe("words that are not known", () => {
  test.each([
    ["hagn 14", 'There is no command "hagn": perhaps "hang".'],
    ["frobnicate", 'There is no command "frobnicate": "dryline help" lists them.'],
    ["now --att 20:00", "There is no option --att: perhaps --at."],
    ["now --frobnicate", "There is no option --frobnicate: there are --at, --json and --help."],
    ["now --at", "--at wants a value: --at TIME."],
    ["hang 1 --ago 5m --ago 6m", "--ago is said twice."],
    ["now today", '"today" is more than this takes.'],
    ["coat shwo x", 'There is no "shwo" here: perhaps "show".'],
    ["completion tcsh", 'There is no "tcsh" here: say bash, zsh or fish.'],
    ["help wndow", 'There is no help on "wndow": perhaps "window".'],
    ["constructor", /^There is no command "constructor": /],
    ["now --constructor", /^There is no option --constructor: /],
  ])("%s: nearest one, exit 2", async (line, sentence) => {
    const said = await refused(bench, "Mon 18:00", line, 2);
    if (typeof sentence === "string") expect(said).toBe(sentence);
    else expect(said).toMatch(sentence);
  });

  test("an option may be shortened while only one begins so", async () => {
    await done(bench, "Mon 18:00", 'tag walker --hung "first clear" --since 12:00');
    expect(await done(bench, "Mon 18:01", "tag walker --hung seal --sin 12:00")).toMatch(/^2 tagged/);
    // --a could be --at or --ago and is too short to guess.
    expect(await refused(bench, "Mon 18:02", "hang 1 --a 18:00", 2)).toMatch(/^There is no option --a: /);
  });

  test("all that is wrong is told at once", async () => {
    const said = await bench.type("mend 1 polish");
    expect(said).toEqual({
      exit: 2,
      out: "",
      err: 'Say how long it took: --minutes 10.\nSay the step to go on from: --then "first clear".\n',
    });
  });
});

describe("the file of taste", () => {
  test.each([
    [
      "{ units:",
      /config\.json is not JSON any more, so the usual taste is taken: correct it, or delete it\.\n$/,
    ],
    [
      '{"clock": "13 h"}',
      /says of clock what is not understood, so the usual is taken: correct it, or take it out\.\n$/,
    ],
  ])("with %s in it is told beside every answer, which goes on with the usual", async (text, sentence) => {
    writeFileSync(join(bench.folder, "config.json"), text);
    const said = await bench.type("now");
    expect(said).toMatchObject({ exit: 0, err: expect.stringMatching(sentence) });
    expect(said.out).toContain("17:50");
    expect((await bench.type("now --json")).err).toBe("");
    expect((await bench.type("settings clock 12")).exit).toBe(0);
    expect((await bench.type("now")).err).toBe("");
  });
});

describe("help", () => {
  test.each(COMMAND_WORDS)(
    "%s --help has usage and examples, and each example is a line it can read",
    async (word) => {
      const out = await done(bench, "Mon 18:00", `${word} --help`);
      expect(out).toMatch(new RegExp(`^dryline ${word}`));
      const command = await COMMANDS[word]?.load();
      expect(command?.examples.length).toBeGreaterThan(0);
      for (const [line] of command?.examples ?? []) expect(line.split(" ")[0]).toBe(word);
      // Every option that an example uses is one the command has.
      const used = (command?.examples ?? []).flatMap(([line]) =>
        [...line.matchAll(/--([a-z-]+)/g)].map(([, name]) => name),
      );
      expect([...Object.keys(command?.options ?? {}), "json"]).toEqual(expect.arrayContaining(used));
      expect(await done(bench, "Mon 18:00", `help ${word}`)).toContain(`dryline ${word}`);
    },
  );

  test("alone lists every command; a word of the trade is explained", async () => {
    const out = await done(bench, "Mon 18:00", "help");
    for (const word of COMMAND_WORDS) expect(out).toContain(`  ${word} `);
    expect(await done(bench, "Mon 18:00", "--help")).toBe(out);
    expect(await done(bench, "Mon 18:00", "help window")).toMatch(/^Window: the span after a coat/);
    expect(await done(bench, "Mon 18:00", 'help "molten lead"')).toMatch(
      /^Molten lead\. .*Never .*Source: /s,
    );
  });
});

describe("hours", () => {
  test("are shown, assumed until said", async () => {
    expect(await done(bench, "Mon 18:00", "hours")).toMatch(/^Assumed until you say yours/);
    await done(bench, "Mon 18:00", 'hours "weekdays 18-21, Sat 9-16"');
    expect(await done(bench, "Mon 18:00", "hours")).toMatch(
      /^Every week: weekdays 18:00-21:00, Sat 9:00-16:00\n/,
    );
  });

  test("tonight longer, not at all, and days away", async () => {
    await done(bench, "Mon 18:00", 'hours "weekdays 18-21"');
    await done(bench, "Mon 18:00", "tag walker");
    expect(await done(bench, "Mon 18:30", "hours till 22:15")).toMatch(
      /^Bench today 18:00 to 22:15\.\nBench till 22:15, 3 h 45 left\.\nWork now\n {2}1 .*shape/,
    );
    expect(await done(bench, "Mon 18:31", "hours not Tuesday")).toMatch(/^The bench is shut tomorrow\./);
    expect(await done(bench, "Mon 18:32", 'hours away "3 May..17 May"')).toBe(
      "Away Sun 3 May to Sun 17 May: the bench is shut.\nNo window shuts meanwhile.\n",
    );
    expect(await done(bench, "Mon 18:33", "hours away Friday")).toMatch(/^Away Fri: the bench is shut\./);
  });

  test("that are no hours are told so", async () => {
    expect(await refused(bench, "Mon 18:00", "hours till late", 2)).toBe(
      '"late" is not a time of day; write it like till 22:15.',
    );
    expect(await refused(bench, "Mon 18:00", "settings hands many", 2)).toBe(
      '"many" is no whole number from 0 to 999999, nor "none".',
    );
  });
});

describe("settings", () => {
  test("of the shop and of taste are kept and shown", async () => {
    await done(bench, "Mon 18:00", "settings place rack 8");
    await done(bench, "Mon 18:00", "settings aim 7");
    await done(bench, "Mon 18:00", "settings out 6");
    await done(bench, "Mon 18:00", "settings process walker");
    await done(bench, "Mon 18:00", 'settings room "paint room" 20 m3 fan 120 mixing 3');
    await done(bench, "Mon 18:00", 'settings in "rack in paint room"');
    await done(bench, "Mon 18:00", "settings margin 2C");
    await done(bench, "Mon 18:00", "settings touches off");
    expect(await done(bench, "Mon 18:00", "settings clock 12")).toBe("From now on clock is 12.\n");
    const shown = await bench.json<Record<string, unknown>>("settings");
    expect(shown).toMatchObject({
      zone: "Europe/Dublin",
      hands: 1,
      places: [{ name: "rack", hooks: 8 }],
      aim: { finishedPerWeek: 7, out: 6 },
      process: "walker",
      // 120 / 20 = 6 changes an hour: 99 % have gone after 46.05 min (CDC, Table B.1: 46), three times that where air mixes so.
      rooms: [{ name: "paint room", airChangesPerHour: 6, mixingFactor: 3, clears: 139 }],
      in: [{ what: "rack", room: "paint room" }],
      margin: 2,
      touches: false,
      taste: { clock: "12 h" },
    });
    const told = await done(bench, "Mon 18:00", "settings");
    expect(told).toContain("paint room clears of 99 % of a vapour in 2 h 19");
    expect(told).toMatch(/it never means that the air is safe to breathe\.\n$/);
    expect(await done(bench, "Mon 18:01", "tag")).toMatch(/^1 tagged, walker/);
    expect(await done(bench, "Mon 18:02", "note 1 hello")).toBe('1 noted 6:02 pm, "hello".\n');
  });

  test("a zone or a taste that is not there is told so", async () => {
    expect(await refused(bench, "Mon 18:00", "settings zone Mars/Olympus", 2)).toMatch(
      /^There is no time zone "Mars\/Olympus"/,
    );
    expect(await refused(bench, "Mon 18:00", "settings units stones", 2)).toBe(
      'Units cannot be "stones": say metric or us.',
    );
    expect(await refused(bench, "Mon 18:00", "settings zone Europe/Dublin", 3)).toMatch(
      /^Nothing would change/,
    );
  });
});

describe("process and coat", () => {
  test("are listed, shown and checked", async () => {
    expect(await done(bench, "Mon 18:00", "process")).toMatch(/ walker +11 steps .* your own\n/);
    expect(await done(bench, "Mon 18:00", "process show walker")).toMatch(
      /\n +4 {2}seal, bench, 6 min\n +coat: varnish, next coat 4 h to 24 h/,
    );
    expect(await done(bench, "Mon 18:00", "coat")).toMatch(/ varnish +cures by solvent +dry-hard 12 h/);
    expect(await done(bench, "Mon 18:00", "coat show varnish")).toMatch(/dust-free after 45 min/);
    expect(await done(bench, "Mon 18:00", "coat check")).toMatch(/^All \d+ coats are sound\.\n$/);
    await done(bench, "Mon 18:00", 'hours "weekdays 18-21, Sat 9-16"');
    expect(await done(bench, "Mon 18:00", "process check walker")).toMatch(
      /^"walker" is sound, but your hours make it hard:\n {2}.*Saturday/,
    );
  });

  test("a wrong file is told with line and column, exit 2", async () => {
    const file = join(bench.folder, "processes", "broken.yaml");
    writeFileSync(file, "process: broken\nsteps:\n  - step: shape\n    hands_om: 5 min\n");
    const said = await bench.type(`process check ${file}`);
    expect(said).toMatchObject({ exit: 2, out: "" });
    expect(said.err).toMatch(new RegExp(`^${file}:4:\\d+ .*hands_on`, "m"));
    expect((await bench.type("process check")).exit).toBe(2);
    expect(await refused(bench, "Mon 18:00", "process check nowhere.yaml", 2)).toBe(
      "There is no file nowhere.yaml.",
    );
  });

  test("new writes a file of one's own, once, that is sound", async () => {
    expect(await done(bench, "Mon 18:00", 'process new "My Walker" --from walker')).toContain(
      "my-walker.yaml",
    );
    expect(existsSync(join(bench.folder, "processes", "my-walker.yaml"))).toBe(true);
    expect(await done(bench, "Mon 18:00", 'process check "my walker"')).toMatch(/^"My Walker" is sound/);
    expect(await refused(bench, "Mon 18:00", 'process new "My Walker"', 2)).toMatch(
      /already: edit its file\.$/,
    );
    await done(bench, "Mon 18:00", 'coat new "my varnish" --from varnish');
    expect(await done(bench, "Mon 18:00", 'coat check "my varnish"')).toBe('"my varnish" is sound.\n');
    await done(bench, "Mon 18:00", "process new plain");
    // A blank of this name would take the place of the one that pieces are made by.
    expect(await refused(bench, "Mon 18:00", 'process new "carved walker"', 2)).toBe(
      'A process "carved walker" comes with dryline: process new "carved walker" --from "carved walker" makes it your own, to edit.',
    );
    expect(await done(bench, "Mon 18:00", "process check plain")).toMatch(/^"plain" is sound/);
  });

  test("new from a tag is the piece as it was really done", async () => {
    await done(bench, "Mon 18:00", "tag walker --name smelt");
    await done(bench, "Mon 18:00", 'route 1 --skip "second seal"');
    await done(bench, "Mon 18:01", 'take 1 --ticked "wood and foam dust"');
    await done(bench, "Mon 18:56", "hang 1");
    await done(bench, "Mon 18:57", 'process new "like 1" --from 1');
    const text = readFileSync(join(bench.folder, "processes", "like-1.yaml"), "utf8");
    expect(text).not.toContain("second seal");
    // Shaped in 55 min where the process says 40.
    expect(text).toMatch(/step: shape\n {4}hands_on: 40\.\.55\.\.55 min/);
    expect(await done(bench, "Mon 18:58", 'process check "like 1"')).toMatch(/^"like 1" is sound/);
  });

  test("new from a tag hangs and waits by the stages that counted, where a coat brought names fewer", async () => {
    await done(bench, "Mon 18:00", 'coat new "bare glaze" --from "lamp-cured resin"');
    const file = join(bench.folder, "processes", "coats", "bare-glaze.yaml");
    const coat = readFileSync(file, "utf8");
    const bare = coat.replace(/,? *dry-hard: 10 min/, "");
    expect(bare).not.toBe(coat);
    writeFileSync(file, bare);
    await done(bench, "Mon 18:00", 'tag "carved walker"');
    const put = 'route 1 --put glaze --like "second epoxy" --after "second epoxy" --coat "bare glaze"';
    await done(bench, "Mon 18:01", put);
    await done(bench, "Mon 18:02", 'process new "glazed" --from 1');
    // The epoxy hangs until dust-free, and the hangers wait for dry-hard; the glaze names tack-free alone.
    const text = readFileSync(join(bench.folder, "processes", "glazed.yaml"), "utf8");
    expect(text).toMatch(/step: glaze\n(?: {4}.*\n)*? {4}until: tack-free\n/);
    expect(text).toMatch(/step: fit the hangers\n(?: {4}.*\n)*? {4}waits_for: tack-free\n/);
    expect(await done(bench, "Mon 18:03", "process check glazed")).toMatch(/^"glazed" is sound/);
  });
});

describe("at a terminal", () => {
  beforeEach(() => done(bench, "Mon 18:00", "tag walker"));

  test("an unread caution is shown whole and ticked on a yes", async () => {
    const said = await typeAtTerminal(bench, "take 1", ["y"]);
    expect(said.exit).toBe(0);
    expect(said.asked).toEqual(['Read "wood and foam dust"? y to tick it: ']);
    expect(said.out).toMatch(/^Wood and foam dust\. .*Never .*Source: .*1 in hand 18:00, shape\.\n/s);
  });

  test("anything but a yes leaves it undone, and without a terminal it says how to tick", async () => {
    const said = await typeAtTerminal(bench, "take 1", ["later"]);
    expect(said).toMatchObject({ exit: 3 });
    expect(await refused(bench, "Mon 18:01", "take 1", 3)).toBe(
      `1 shape asks to read "wood and foam dust" first: read and tick: "dryline help 'wood and foam dust'" shows it, --ticked "wood and foam dust" ticks it.`,
    );
  });

  test("this one first is asked about after whom it delays is said", async () => {
    await done(bench, "Mon 18:00", "tag walker");
    // Of two alike the plan has one first: the other coming first delays it.
    const no = [await typeAtTerminal(bench, "first 1", ["n"]), await typeAtTerminal(bench, "first 2", ["n"])];
    for (const { out } of no) expect(out).toMatch(/Nothing was changed\.\n$/);
    expect(no.map(({ out }) => out).join("")).toMatch(/It delays [12] by /);
    expect((await typeAtTerminal(bench, "first 2", ["y"])).out).toMatch(/2 comes first\.\n$/);
  });
});
