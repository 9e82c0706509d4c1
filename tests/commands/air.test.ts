import { afterEach, beforeEach, expect, test } from "vitest";
import type { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";
import { benchAfter } from "./type-lines.ts";

let bench: BenchInAFolder;

beforeEach(async () => {
  bench = await benchAfter("Mon 18:00", ["settings zone Europe/Dublin"]);
});
afterEach(() => bench.remove());

test("nothing is known of the air until it is told", async () => {
  expect((await bench.type("air")).out).toMatch(/not known: coats are taken to dry as their sheets say/);
});

test("a reading by hand is kept, in either unit, for the shop or a place", async () => {
  expect(await bench.type("air 62F 58%")).toMatchObject({
    exit: 0,
    out: expect.stringMatching(/16.7 °C 58 %/),
  });
  expect((await bench.type('air 27C 40% --in "rack"')).exit).toBe(0);
  expect((await bench.type('air 62F 58% --in "the shop"')).exit).toBe(0);
  const { out } = await bench.type("air");
  expect(out).toMatch(/the shop: 16.7 °C 58 %, dew point 8.4 °C, as read/);
  expect(out).toMatch(/rack: 27 °C 40 %/);
});

test.each([
  ["air 20C 140%", /140 % cannot be/],
  ["air 400F 50%", /no air of a bench/],
  ["air 20C", /lacks a humidity/],
  ["air 20C 50% --in attic", /no place "attic"/],
  ["air --low 30C --high 8C", /low/],
  ["air --low cold", /no temperature/],
  ["air --humidity 50%", /--humidity is of a day/],
  ["air --unknown --low 5C --high 8C", /not both/],
])("%s is refused in a sentence, and nothing is kept", async (line, sentence) => {
  const said = await bench.type(line);
  expect(said.exit).toBe(2);
  expect(said.err).toMatch(sentence);
  expect((await bench.type("air")).out).toMatch(/not known/);
});

test("air last read long ago is told with its time, in the shop's zone for other programs", async () => {
  await bench.type("air 20C 50% --ago 8h");
  expect((await bench.type("air")).out).toMatch(/20 °C 50 %, dew point 9.3 °C, as last read 10:00/);
  expect((await bench.type("air")).out).toMatch(/next 24 h: 20 °C expected/);
  expect((await bench.type("now")).out).toMatch(/, 20 °C 50 % at 10:00\n/);
  const { places } = JSON.parse((await bench.type("air --json")).out);
  expect(places).toMatchObject([{ place: "the shop", celsius: 20, readAt: "2026-03-23T10:00:00+00:00" }]);
});

test("what the cold ahead does is told to other programs with moments in the shop's zone", async () => {
  await bench.type("settings zone Europe/Dublin");
  await bench.type('tag "turned popper" --hung "first clear" --since 17:30');
  await bench.type("air --low 5C --high 8C");
  const { cold } = JSON.parse((await bench.type("air --json")).out);
  expect(cold).toMatchObject([
    { tag: 1, at: expect.stringMatching(/^2026-03-2\dT\d\d:\d\d.*[+-]\d\d:\d\d$/) },
  ]);
});

test("frost is read as a figure, not as an option", async () => {
  expect(await bench.type("air -3C 80%")).toMatchObject({
    exit: 0,
    out: expect.stringMatching(/-3 °C 80 %/),
  });
});

test("a pipe that breaks off and starts again loses nothing and adds nothing twice", async () => {
  const lines = ["2026-03-23T16:00Z 20C 50%", "2026-03-23T17:00Z 18C 55%", "2026-03-23T17:30Z 17C 57%"];
  const first = await bench.type("air - --from garage", [`${lines[0]}\n${lines[1]}`]);
  expect(first).toMatchObject({ exit: 0, out: expect.stringMatching(/2 readings kept/) });
  const again = await bench.type("air - --from garage", [`${lines.join("\n")}\n`]);
  expect(again.out).toMatch(/1 reading kept, 2 known already/);
});

test("lines that cannot be right are told by number and do not count, and none is lost", async () => {
  const lines = ["20C 50%", "what", "20C 140%", "2026-03-24T18:00Z 20C 50%", "21C 50%"];
  const said = await bench.type("air -", [lines.join("\n")]);
  expect(said.exit).toBe(0);
  expect(said.out).toMatch(/4 readings kept, 2 in doubt, 1 line not understood/);
  expect(said.err).toMatch(/Line 2: .*lacks a temperature/);
  expect(said.err).toMatch(/Line 3 is kept but does not count: a humidity of 140 % cannot be/);
  expect(said.err).toMatch(/Line 4 .*of the future/);
  // Of two of one moment the later named.
  expect((await bench.type("air")).out).toMatch(/the shop: 21 °C 50 %/);
});

test("a place named in the pipe is found as a typed one is, and the shop's own air needs none", async () => {
  const line = (place: string, celsius: number) => JSON.stringify({ t: celsius, rh: 50, place });
  const said = await bench.type("air - --in rack", [`${line("RAC", 24)}\n${line("the shop", 18)}\n`]);
  expect(said).toMatchObject({ exit: 0, err: "", out: expect.stringMatching(/2 readings kept/) });
  const { places } = await bench.json<{ places: unknown[] }>("air");
  expect(places).toHaveLength(2);
  expect(places).toContainEqual(expect.objectContaining({ place: "rack", celsius: 24 }));
  expect(places).toContainEqual(expect.objectContaining({ place: "the shop", celsius: 18 }));
});

test("a reading of a place that there is not is told and does not count, until it is sent again when there is", async () => {
  const line = '{"time":"2026-03-23T17:00Z","t":24,"rh":50,"place":"attic"}\n';
  const said = await bench.type("air - --from attic", [line]);
  expect(said.out).toMatch(/1 reading kept, 1 in doubt/);
  expect(said.err).toMatch(
    /Line 1 is kept but does not count: there is no place "attic".*settings place "attic" 4 makes it one/,
  );
  expect((await bench.type("air")).out).toMatch(/not known/);
  await bench.type("settings place attic 4");
  expect((await bench.type("air - --from attic", [line])).out).toMatch(/1 reading kept/);
  expect((await bench.type("air - --from attic", [line])).out).toMatch(/0 readings kept, 1 known already/);
  expect((await bench.type("air")).out).toMatch(/attic: 24 °C 50 %/);
});

test("a row that came cut off counts once it comes whole", async () => {
  const whole = "time;temperature;humidity\n2026-03-23T17:00Z;20;50";
  expect((await bench.type("air -", [whole])).err).toMatch(/may be cut off/);
  await bench.type("air -", [`${whole}\n`]);
  expect((await bench.type("air")).out).toMatch(/the shop: 20 °C 50 %/);
});

test("a logger with a gap is told so", async () => {
  const said = await bench.type("air -", ["2026-03-23T06:00Z 20C 50%\n2026-03-23T16:00Z 18C 50%\n"]);
  expect(said.out).toMatch(/no reading from 6:00 to 16:00|no reading from 06:00 to 16:00/);
});

test("a logger whose clock is in another zone is read in that zone", async () => {
  // 18:30 in Berlin is 17:30 in Dublin: half an hour ago, not half an hour ahead.
  const said = await bench.type("air - --zone Europe/Berlin", ["2026-03-23 18:30 20C 50%\n"]);
  expect(said.err).toBe("");
  expect((await bench.type("air")).out).toMatch(/20 °C 50 %/);
});

test("a logger whose clock is hours behind is told so, as it may be in another zone", async () => {
  // It is 18:00 in Dublin and 13:00 in New York.
  const behind = await bench.type("air -", ["2026-03-23 13:00 20C 50%\n"]);
  expect(behind.out).toMatch(
    /the newest reading is of 13:00: if the sensor sent it just now, its clock is in another zone/,
  );
  expect((await bench.type("air -", ["2026-03-23 17:50 20C 50%\n"])).out).not.toMatch(/zone/);
  const named = await bench.type("air - --zone America/New_York", ["2026-03-23 14:00 20C 50%\n"]);
  expect(named.out).not.toMatch(/another zone/);
});

test("without a sensor a stated day is taken", async () => {
  expect((await bench.type("air --low 8C --high 22C --humidity 65%")).out).toMatch(/8 °C to 22 °C, 65 %/);
  expect((await bench.type("air")).out).toMatch(/as you stated it/);
  expect((await bench.type("air --unknown")).out).toMatch(/only known where it is read/);
  expect((await bench.type("air")).out).toMatch(/not known/);
});

test("the margin over the dew point can be another, and both times its source is told", async () => {
  const rule = "(3 °C or 5 °F by MIL-HDBK-1110, 9.6.6, for steel; carried over to small painted wood)";
  expect((await bench.type("settings")).out).toContain(`margin   3 °C above the dew point ${rule}`);
  expect((await bench.type("settings margin 2C")).out).toContain(`2 °C above the dew point ${rule}`);
});

test("a damp hour holds a coat till the minute it is over, the same however often it is asked", async () => {
  await bench.type('hours "weekdays 18-21"');
  await bench.type('tag walker --hung seal --since "Mon 10:00"');
  const hourly = Array.from(
    { length: 24 },
    (_, hour) => `2026-03-${hour < 18 ? 23 : 22}T${String(hour).padStart(2, "0")}:00Z 16C 60%\n`,
  );
  await bench.type("air - --from garage", hourly.sort());
  bench.now = at("Mon 18:04");
  await bench.type("air 16C 93%");
  const heldTill = async (when: string) => {
    bench.now = at(when);
    const [row] = (await bench.json<{ held: { until: string; because: string }[] }>("now")).held;
    expect(row?.because).toMatch(/dew point/);
    return row?.until.slice(11, 16) ?? "";
  };
  const till = await heldTill("Mon 18:05");
  expect(till > "18:05" && till < "21:00").toBe(true);
  expect(await heldTill("Mon 18:13")).toBe(till);
  bench.now = at(`Mon ${till}`) - 60_000;
  expect((await bench.type('take 1 --ticked "solvent vapour"')).err).toMatch(`held till ${till}`);
  bench.now = at(`Mon ${till}`);
  expect((await bench.type('take 1 --ticked "solvent vapour"')).exit).toBe(0);
});
