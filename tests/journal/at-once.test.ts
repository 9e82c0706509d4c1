import { join } from "node:path";
import { expect, test } from "vitest";
import { bundleProgram, startProgram } from "./child-program.ts";
import { bareFile, openForTest, scratchFolder } from "./scratch.ts";

test("four programs that tag at once, from the making of the file on, lose nothing and share no tag", async () => {
  const folder = scratchFolder();
  const path = join(folder, "journal.db");
  const program = await bundleProgram(folder, "tag-many");
  const running = ["anna", "bert", "cleo", "dora"].map((name) => startProgram(program, path, name, "150"));
  const ends = await Promise.all(running.map(({ ended }) => ended));
  expect(ends).toEqual(Array(4).fill({ code: 0, errors: "" }));

  // Each says "opening" first. 4 programs x 150 pieces.
  const told = running.flatMap(({ lines }) => lines.slice(1));
  expect(told).toHaveLength(600);
  const journal = await openForTest(path);
  const { events, nextTag } = await journal.read({ of: "all" });
  const kept = events.map(
    (event) => `${event.act} ${event.tag} ${event.kind === "tagged" ? event.name : ""}`,
  );
  expect(kept.toSorted()).toEqual(told.toSorted());
  expect(events.map(({ tag }) => tag)).toEqual(Array.from({ length: 600 }, (_, index) => index + 1));
  expect(nextTag).toBe(601);
  expect(await journal.pieces(0, Number.MAX_SAFE_INTEGER)).toHaveLength(600);
  expect(bareFile(path).pragma("integrity_check", { simple: true })).toBe("ok");
}, 60_000);
