import { afterAll, beforeAll, expect, test } from "vitest";
import { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";

interface Rotation {
  readonly timetable: { readonly out?: number };
}

let bench: BenchInAFolder;

beforeAll(async () => {
  bench = new BenchInAFolder(at("Mon 18:00"), { planRounds: 5 });
  await bench.type("settings zone Europe/Dublin");
});
afterAll(() => bench.remove());

test("a process is shown with the waits and windows of other air", async () => {
  const warm = await bench.type("process show walker --air 30C,50%");
  expect(warm.out).toMatch(/^walker in air of 30 °C 50 % \(predicted\)/);
  // The varnish's 4 h to 24 h by its sheet at 20 °C: 1.501 times as fast by 30 kJ/mol.
  expect(warm.out).toMatch(/coat: varnish, next coat 2 h 40 to 16 h/);
  expect((await bench.type("process show walker --air 5C,50%")).out).toMatch(/varnish does not cure in it/);
});

test("warm air needs no more pieces out for one a day than cool air, and both say which air it was", async () => {
  const line = 'rotation walker --pace 1/day --hours "daily 9-17"';
  const out = async (air: string) =>
    (await bench.json<Rotation>(`${line} --air ${air}`)).timetable.out ?? Number.NaN;
  const [warm, cool] = [await out("27C,45%"), await out("12C,45%")];
  expect(warm).toBeGreaterThanOrEqual(1);
  expect(cool).toBeGreaterThanOrEqual(warm);
  expect((await bench.type(`${line} --air 27C,45%`)).out).toMatch(/^In air of 27 °C 45 % \(predicted\):/);
  expect((await bench.type(`${line} --air hot`)).err).toMatch(/--air "hot" is no air/);
});
