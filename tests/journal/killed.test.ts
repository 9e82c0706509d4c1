import { join } from "node:path";
import { expect, test } from "vitest";
import { bundleProgram, type Running, startProgram } from "./child-program.ts";
import { bareFile, openForTest, scratchFolder } from "./scratch.ts";

const kills = 200;
/** Two at a time: one is often killed while the other waits for it. */
const together = 2;

/** Numbers from 0 to below 1 that are the same in each run. The generator of Park and Miller (1988). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** Kills a program when it has said a chance number of lines: while it opens (one in ten), or between later acts. */
async function killSometime({ child, hasSaid, ended }: Running, chance: () => number): Promise<void> {
  await hasSaid(chance() < 0.1 ? 1 : 2 + Math.floor(chance() * 20));
  child.kill("SIGKILL");
  await ended;
}

test(`after ${kills} programs killed while appending every acknowledged act is there and the file is sound`, async () => {
  const folder = scratchFolder();
  const path = join(folder, "journal.db");
  const program = await bundleProgram(folder, "tag-many");
  const chance = seeded(2026);
  const acknowledged: string[] = [];
  const errors: string[] = [];
  const killInTurn = async (name: string) => {
    for (let turn = 0; turn < kills / together; turn++) {
      const running = startProgram(program, path, `${name}${turn}`, "1000000");
      await killSometime(running, chance);
      acknowledged.push(...running.lines.slice(1)); // The first is "opening".
      errors.push((await running.ended).errors);
    }
  };
  await Promise.all(Array.from({ length: together }, (_, index) => killInTurn(`killed ${index} `)));

  // Each was killed in mid-work: none ended by itself or in trouble.
  expect(errors.filter((error) => error !== "")).toEqual([]);
  expect(acknowledged.length).toBeGreaterThan(kills);
  const journal = await openForTest(path);
  const { events, setAside } = await journal.read({ of: "all" });
  const kept = new Set(
    events.map((event) => `${event.act} ${event.tag} ${event.kind === "tagged" ? event.name : ""}`),
  );
  expect(acknowledged.filter((act) => !kept.has(act))).toEqual([]);
  expect(setAside).toEqual([]);
  expect(await journal.pieces(0, Number.MAX_SAFE_INTEGER)).toHaveLength(events.length);
  expect(bareFile(path).pragma("integrity_check", { simple: true })).toBe("ok");
}, 180_000);
