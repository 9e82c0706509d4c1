import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { doEffect } from "../../src/dashboard/do-effect.ts";
import { takeOf } from "../../src/dashboard/requests.ts";
import type { Effect, Overlay } from "../../src/dashboard/state.ts";
import { handsOf } from "../../src/shop/hands.ts";
import type { Workshop } from "../../src/workshop/workshop.ts";
import { benchAfter, done } from "../commands/type-lines.ts";
import type { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";

let bench: BenchInAFolder;
let workshop: Workshop;

beforeEach(async () => {
  bench = await benchAfter("Mon 17:50", [
    "settings zone Europe/Dublin",
    "settings place rack 2",
    "settings place wheel 4",
  ]);
  await done(bench, "Mon 18:00", "tag walker --hung seal --since 12:30");
  await done(bench, "Mon 18:00", "tag walker");
  workshop = await bench.workshop();
});
afterEach(() => {
  workshop.close();
  bench.remove();
});

const happens = async (effect: Parameters<typeof doEffect>[0]) =>
  doEffect(effect, workshop, { zone: await workshop.zone(), now: workshop.now(), clock24: true });

/** The choices that an effect asks for. */
async function asked(effect: Parameters<typeof doEffect>[0]): Promise<Extract<Overlay, { is: "choose" }>> {
  const happened = await happens(effect);
  if (happened.is !== "overlay" || happened.overlay.is !== "choose") throw new Error(happened.is);
  return happened.overlay;
}

/** Does what a choice of this label does. */
async function choose({ choices }: Awaited<ReturnType<typeof asked>>, label: RegExp): Promise<Effect[]> {
  const choice = choices.find((one) => label.test(one.label));
  for (const effect of choice?.effects ?? []) {
    if (effect.do === "perform") await happens(effect);
  }
  return [...(choice?.effects ?? [])];
}

test("a mend asks from which step to go on: those done or open, none that is blocked", async () => {
  const mend = { what: "level the run", minutes: 10 };
  const overlay = await asked({ do: "mend", tags: [1], mend });
  expect(overlay.choices.map(({ label }) => label)).toEqual([
    "1  shape",
    "2  drill",
    "3  pour the ballast",
    "4  seal",
    "5  second seal",
  ]);
  await choose(overlay, /seal$/);
  const piece = (await workshop.shop()).pieces.get(1);
  expect(piece?.mends).toMatchObject([{ what: "level the run", minutes: 10, goOnFrom: "seal" }]);
});

test("a piece is moved to a place named with its free hooks", async () => {
  const overlay = await asked({ do: "place", tags: [1] });
  // Piece 1 hangs on the rack of two hooks.
  expect(overlay).toMatchObject({ title: "Move 1 where?" });
  expect(overlay.choices.map(({ label }) => label)).toEqual([
    "1  rack, 1 hook free",
    "2  wheel, 4 hooks free",
    "o  another place",
  ]);
  await choose(overlay, /wheel/);
  expect((await workshop.shop()).pieces.get(1)?.place).toBe("wheel");
});

test("what is in hand is hung in the place chosen", async () => {
  await done(bench, "Mon 18:10", 'take 1 --ticked "solvent vapour"');
  bench.now = at("Mon 18:16");
  const overlay = await asked({ do: "place", tags: [1] });
  expect(overlay.title).toBe("Hang 1 where?");
  expect(overlay.choices[0]?.label).toBe("1  rack, as its step says, 2 hooks free");
  await choose(overlay, /wheel/);
  const piece = (await workshop.shop()).pieces.get(1);
  expect(piece?.work.get("second seal")?.hangs).toHaveLength(1);
  expect(piece?.place).toBe("wheel");
  // Another place is typed.
  expect(await choose(await asked({ do: "place", tags: [1] }), /another/)).toMatchObject([
    { do: "type", purpose: { for: "place", tags: [1], hang: false } },
  ]);
});

test("a place that is typed must be one, so that a slip of the keys loses neither hook nor air", async () => {
  const typed = (said: string) => ({ do: "place named" as const, tags: [1], said, hang: false });
  expect(await happens(typed("wheeel"))).toMatchObject({
    is: "told",
    message: {
      text: 'There is no place "wheeel": perhaps "wheel"; settings place "wheeel" 4 makes it one, of 4 hooks.',
      tone: "refused",
    },
  });
  expect((await workshop.shop()).pieces.get(1)?.place).toBe("rack");
  await happens(typed("WHE"));
  expect((await workshop.shop()).pieces.get(1)?.place).toBe("wheel");
});

test("a measurement that a step wants is asked for by its name, unit and bound", async () => {
  expect(await happens({ do: "measure", tags: [2], step: "pour the ballast" })).toMatchObject({
    overlay: {
      title: "wood moisture of 2 in %, at most 10",
      purpose: { for: "measure", tags: [2], what: "wood moisture", unit: "%" },
    },
  });
});

test("a tag that could go on with several steps is asked which, as no key names one", async () => {
  await done(bench, "Mon 18:10", "settings place rack 8");
  const process = join(bench.folder, "processes", "walker.yaml");
  // Hangers that can be bent any time make two steps of a new piece open at once.
  const hangers = "  - step: bend the hangers\n    station: bench\n    hands_on: 8 min\n    after: []\n";
  writeFileSync(process, `${readFileSync(process, "utf8").trimEnd()}\n${hangers}`);
  await done(bench, "Mon 18:11", "tag walker");
  bench.now = at("Mon 18:12");
  const overlay = await asked({ do: "perform", request: takeOf([3], null, at("Mon 18:12")) });
  expect(overlay.title).toBe("Which step of 3?");
  expect(overlay.choices.map(({ label }) => label)).toEqual(["1  shape", "2  bend the hangers"]);
  await choose(overlay, /bend/);
  const piece = (await workshop.shop()).pieces.get(3);
  expect(piece && handsOf(piece).running?.step).toBe("bend the hangers");
});

test("a new piece is told with its steps open, though the clock goes on between key and act", async () => {
  const speech = { zone: await workshop.zone(), now: workshop.now() - 20, clock24: true };
  const told = await doEffect({ do: "tag", process: "walker", name: "smelt" }, workshop, speech);
  expect(told).toMatchObject({ is: "told", message: { text: "3 tagged, smelt. Shape is open." } });
});
