import { spawnSync } from "node:child_process";
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bashCompletion, fishCompletion, zshCompletion } from "../../src/commands/completion-scripts.ts";

const has = (program: string) => spawnSync(program, ["--version"]).status === 0;

let folder: string;

/** A dryline that offers two words, one with a space, whatever is asked. */
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "dryline-completion-"));
  writeFileSync(join(folder, "dryline"), "#!/bin/sh\nprintf 'first clear  a step\\n14  smelt\\n'\n");
  chmodSync(join(folder, "dryline"), 0o755);
  writeFileSync(join(folder, "bash"), bashCompletion);
  writeFileSync(join(folder, "zsh"), zshCompletion);
  writeFileSync(join(folder, "fish"), fishCompletion);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(program: string, args: readonly string[]) {
  const env = { ...process.env, PATH: `${folder}${delimiter}${process.env.PATH ?? ""}` };
  const { status, stdout, stderr } = spawnSync(program, [...args], { encoding: "utf8", env });
  return { status, stdout, stderr };
}

/** A shell that a clone may lack is said to be lacking; where DRYLINE_DEMAND_OUTSIDE is set it must be there. */
function withShell(shell: string, check: () => void): void {
  test(`${shell} reads its script${has(shell) ? "" : ` (not run: ${shell} missing)`}`, () => {
    if (has(shell)) check();
    else expect(process.env.DRYLINE_DEMAND_OUTSIDE ?? "", `${shell} must be installed here`).toBe("");
  });
}

describe("completion", () => {
  withShell("bash", () => {
    expect(run("bash", ["-n", join(folder, "bash")])).toEqual({ status: 0, stdout: "", stderr: "" });
    const script = `source ${join(folder, "bash")}; COMP_WORDS=(dryline hang fi); COMP_CWORD=2; _dryline; printf '%s\\n' "\${COMPREPLY[@]}"`;
    expect(run("bash", ["-c", script])).toEqual({ status: 0, stdout: "first\\ clear\n14\n", stderr: "" });
    // Inside an open quote the words are not quoted once more.
    const quoted = script.replace("hang fi", "hang '\"fi'");
    expect(run("bash", ["-c", quoted]).stdout).toBe("first clear\n14\n");
  });

  withShell("zsh", () => {
    expect(run("zsh", ["-n", join(folder, "zsh")])).toEqual({ status: 0, stdout: "", stderr: "" });
  });

  withShell("fish", () => {
    expect(run("fish", ["--no-execute", join(folder, "fish")])).toEqual({
      status: 0,
      stdout: "",
      stderr: "",
    });
    const script = `source ${join(folder, "fish")}; complete -C 'dryline hang '`;
    expect(run("fish", ["-c", script]).stdout).toContain("14\tsmelt");
  });
});
