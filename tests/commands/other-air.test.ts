import { afterAll, beforeAll, expect, test } from "vitest";
import { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";

interface Rotation {
  readonly timetable: { readonly out?: number };
}

let bench: BenchInAFolder;

beforeAll(async () => {
  bench = new BenchInAFolder(at("Mon 18:00"));
  await bench.type("settings zone Europe/Dublin");
});
afterAll(() => bench.remove());

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
