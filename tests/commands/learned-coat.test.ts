/** What touch tests teach of a can. */
import { afterEach, beforeEach, expect, test } from "vitest";
import type { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";
import { benchAfter } from "./type-lines.ts";

let bench: BenchInAFolder;

beforeEach(async () => {
  bench = await benchAfter("Mon 18:00", ["settings zone Europe/Dublin"]);
});
afterEach(() => bench.remove());

const MINUTE = 60_000;

/** Tags a walker hung from its first seal so many minutes ago, and says what a finger finds. */
async function felt(tag: number, ago: number, found: string): Promise<string> {
  await bench.type(`tag walker --name n${tag} --hung seal --since "${ago} min ago"`);
  return (await bench.type(`touch ${tag} ${found}`)).out;
}

async function hardOf(tag: number): Promise<number> {
  const { waiting } = await bench.json<{ waiting: { tag: number; hard: string | null }[] }>("now");
  return Date.parse(waiting.find((row) => row.tag === tag)?.hard ?? "");
}

test("a coat tacky past its time is slower at once: 3 h of 2 h is 1.5x, dry-hard after 18 h", async () => {
  expect(await felt(1, 180, "tacky")).toMatch(
    /1: varnish takes 1.5x its sheet here, dry-hard .* \(predicted\)/,
  );
  await bench.type("touch 1 dry");
  // Hung 15:00, 12 h x 1.5.
  expect(await hardOf(1)).toBe(at("Mon 15:00") + 18 * 60 * MINUTE);
});

test("a touch is answered by what it has just taught: the next command tells the same moment", async () => {
  // Dry after 1 h where its sheet says 2 h; further touches move what is known of the can as well.
  for (const tag of [1, 2, 3]) {
    const moment = /Dry-hard about ([^,.]+)/.exec(await felt(tag, 60, "dry"))?.[1];
    expect(moment).toBeDefined();
    expect((await bench.type(`rack ${tag}`)).out).toContain(`dry-hard about ${moment}`);
  }
});

test("nine slow layings teach the can, and the next one is predicted by it", async () => {
  for (let tag = 1; tag <= 9; tag++) await felt(tag, 156, "tacky");
  // 156 min of 120: each at least 1.3. Of nine the can takes exp(0.2624 x 0.0625 / (0.0625 + 0.0225 / 9)) = 1.29.
  expect((await bench.type("coat show varnish")).out).toMatch(
    /Your varnish runs 1.3x its sheet, from 9 tests/,
  );
  await bench.type('tag walker --name next --hung seal --since "18:00"');
  const minutes = (await hardOf(10)) / MINUTE - at("Mon 18:00") / MINUTE;
  expect(Math.abs(minutes - 720 * Math.exp(0.252_273))).toBeLessThanOrEqual(1);
});

test("tests that agree teach nothing", async () => {
  for (let tag = 1; tag <= 9; tag++) await felt(tag, 60, "tacky");
  await felt(10, 180, "dry");
  expect((await bench.type("coat show varnish")).out).not.toMatch(/its sheet, from/);
});

test("what is undone was never felt, and touches can be told not to count", async () => {
  await felt(1, 180, "tacky");
  await bench.type("undo");
  expect(await hardOf(1)).toBe(at("Tue 3:00"));
  await bench.type("touch 1 tacky");
  await bench.type("touch 1 dry");
  expect(await hardOf(1)).toBe(at("Mon 15:00") + 18 * 60 * MINUTE);
  expect((await bench.type("settings touches off")).out).toMatch(/no longer correct/);
  expect(await hardOf(1)).toBe(at("Tue 3:00"));
});

test("other air is told beside the sheet", async () => {
  const said = await bench.type("coat varnish --air 30C,45%");
  expect(said).toMatchObject({
    exit: 0,
    out: expect.stringMatching(/by its sheet at 20 °C 50 %, and at 30 °C 45 %/),
  });
  expect(said.out).toMatch(/dry-hard +12 h +(8 h|7 h 59)/);
  expect((await bench.type("coat varnish --air 5C,45%")).out).toMatch(/dry-hard +12 h +never/);
  // 24 h at 20 °C; by 55 and 70 kJ/mol 10 degrees more are 2.105 and 2.579 times as fast (cure-rate.test.ts).
  expect((await bench.type('coat "bar-top resin" --air 30C,45%')).out).toMatch(
    /dry-hard 11 h 2\d to 9 h 1\d by 55 to 70 kJ\/mol/,
  );
  expect((await bench.type("coat varnish --air warm")).err).toMatch(/is no air/);
});
