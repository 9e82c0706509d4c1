import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { LibraryOnDisk } from "../../src/workshop/library.ts";
import { findPackageRoot } from "../../src/workshop/package-root.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dryline-library-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

const shipped = join(findPackageRoot(), "processes");
const library = () => new LibraryOnDisk({ shipped, own: join(folder, "own"), cache: join(folder, "cache") });
const read = () => library().read();

describe("the library of process and coat files", () => {
  it("reads the shipped files without a problem: at least four processes, every coat and caution they name", async () => {
    const { processes, problems, rules } = await read();
    expect(problems).toEqual([]);
    expect(processes.length).toBeGreaterThanOrEqual(4);
    for (const { definition } of processes) {
      expect(definition.steps.length, definition.name).toBeGreaterThanOrEqual(10);
      expect(definition.steps.length, definition.name).toBeLessThanOrEqual(16);
      for (const { coat, cautions } of definition.steps) {
        if (coat !== null) expect(definition.coats[coat], `${definition.name}: ${coat}`).toBeDefined();
        for (const caution of cautions) expect(rules.cautions[caution], caution).toBeDefined();
      }
    }
  });

  it("tells a file that cannot be read, and uses the others: a link that leads nowhere, a folder of that name", async () => {
    const own = join(folder, "own");
    mkdirSync(join(own, "folder.yaml"), { recursive: true });
    symlinkSync(join(folder, "nothing"), join(own, "link.yaml"));
    const { processes, problems } = await read();
    expect(processes.length).toBeGreaterThanOrEqual(4);
    expect(problems).toEqual([
      `${join(own, "folder.yaml")} cannot be read (EISDIR)`,
      `${join(own, "link.yaml")} cannot be read (ENOENT)`,
    ]);
  });

  it("answers the same from its cache, and anew when a file of the maker's own comes or changes", async () => {
    const first = await read();
    expect(await read()).toEqual(first);
    const own = join(folder, "own");
    mkdirSync(own);
    const [some] = first.processes;
    if (some === undefined) throw new Error("no shipped process");
    writeFileSync(
      join(own, "mine.yaml"),
      readFileSync(some.file, "utf8").replace(/^process: .*/m, "process: my own"),
    );
    const names = (await read()).processes.map(({ definition }) => definition.name);
    expect(names).toContain("my own");
    expect(names).toContain(some.definition.name);
  });

  it("is one and the same as long as no file changes", async () => {
    const asked = library();
    const first = await asked.read();
    expect(await asked.read()).toBe(first);
    mkdirSync(join(folder, "own"));
    writeFileSync(join(folder, "own", "broken.yaml"), "process: broken\nsteps: 7\n");
    expect((await asked.read()).problems).toHaveLength(1);
  });

  it("tells of a wrong file by its path and goes on with the rest", async () => {
    mkdirSync(join(folder, "own"));
    writeFileSync(join(folder, "own", "broken.yaml"), "process: broken\nsteps: 7\n");
    const { processes, problems } = await read();
    expect(problems.join("\n")).toContain("broken.yaml");
    expect(processes.length).toBeGreaterThanOrEqual(4);
  });

  it("lets the maker's own file take the place of a shipped one of the same name", async () => {
    const [some] = (await read()).processes;
    if (some === undefined) throw new Error("no shipped process");
    mkdirSync(join(folder, "own"));
    cpSync(some.file, join(folder, "own", "same.yaml"));
    const found = (await read()).processes.filter(
      ({ definition }) => definition.name === some.definition.name,
    );
    expect(found.map((entry) => entry.shipped)).toEqual([false]);
  });

  it("survives a damaged cache", async () => {
    const first = await read();
    writeFileSync(join(folder, "cache", "library.json"), "{ half");
    expect(await read()).toEqual(first);
  });
});
