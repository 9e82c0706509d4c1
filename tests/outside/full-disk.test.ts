/** A shop on a disk without room: a small one of its own, where one may be mounted. By the program as it is built. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, inject, onTestFinished, test } from "vitest";
import { builtCommand } from "../../src/fresh.mjs";

const program = "unshare";
const APART = ["--mount", "--map-root-user", "sh", "-c"];
const MOUNT = 'mount -t tmpfs -o size=600k tmpfs "$DRYLINE_HOME"';

function onSmallDisk(script: string, home: string) {
  const env = { ...process.env, DRYLINE_HOME: home };
  return spawnSync(program, [...APART, `${MOUNT} && { ${script}; }`], { encoding: "utf8", env });
}

function scratchHome(): string {
  const home = mkdtempSync(join(tmpdir(), "dryline-full-"));
  onTestFinished(() => rmSync(home, { recursive: true, force: true }));
  return home;
}

/** Not demanded anywhere: many machines let nobody mount. */
const mayMount = onSmallDisk("true", tmpdir()).status === 0;
const name = "on a full disk all is told as before, acts are refused in one sentence, and nothing is lost";

test(`${name}${mayMount ? "" : " (not run: no disk can be mounted here)"}`, () => {
  if (!mayMount) return;
  expect(inject("buildTrouble")).toBeNull();
  const home = scratchHome();
  const dryline = `'${process.execPath}' '${builtCommand}'`;
  const part = "echo ======; echo ====== >&2";
  const script = [
    `${dryline} tag "carved walker" --name smelt`,
    part,
    `head -c 700k /dev/zero > "$DRYLINE_HOME/photos" 2>/dev/null`,
    `${dryline} now; echo "exit $?"`,
    part,
    `${dryline} take 1 --step "bend the hangers"; echo "exit $?"`,
    part,
    `rm "$DRYLINE_HOME/photos"; ${dryline} take 1 --step "bend the hangers"; echo "exit $?"`,
  ].join("\n");
  const { stdout, stderr } = onSmallDisk(script, home);
  const [tagged, now, refused, taken] = stdout.split("======\n");
  const [, toldNow, toldRefused, toldTaken] = stderr.split("======\n");
  expect(tagged).toMatch(/^1 tagged, smelt/);
  expect(now).toMatch(/1 smelt +bend the hangers[\s\S]*exit 0\n$/);
  const warning = `Nothing can be recorded: the disk that holds ${home} is full; make room, then start anew.\n`;
  expect(toldNow).toBe(warning);
  expect(refused).toBe("exit 2\n");
  expect(toldRefused).toBe(
    `The disk that holds ${join(home, "journal.sqlite")} is full: make room and do it again; nothing of this act was written.\n`,
  );
  expect(taken).toMatch(/^1 in hand[\s\S]*exit 0\n$/);
  expect(toldTaken).toBe("");
});
