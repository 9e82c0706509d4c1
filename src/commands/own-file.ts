import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { plainText } from "../words/plain-text.ts";

/** A name as that of a file: letters and digits, the rest hyphens. `fileNameOf("My Varnish!") === "my-varnish.yaml"` */
function fileNameOf(name: string): string {
  const bare = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-|-$/g, "");
  return `${bare === "" ? "unnamed" : bare.slice(0, 80)}.yaml`;
}

/** Letters of a name, as the files' own check has it. */
const LONGEST_NAME = 60;

/** Why a file that says this name would be refused when it is read; null: it would not. */
export function unfitName(name: string): string | null {
  const fit = name.length <= LONGEST_NAME && plainText(name) === name;
  return fit ? null : `the name must have at most ${LONGEST_NAME} letters, without control characters`;
}

/**
 * Writes a new file of the maker's own; one that is there is never written over.
 *
 * @returns where it was written, or why not
 */
export function writeOwnFile(
  folder: string,
  name: string,
  text: string,
): { readonly file: string } | { readonly problem: string } {
  const file = join(folder, fileNameOf(name));
  if (existsSync(file)) return { problem: `${file} is there already: edit it, or say another name` };
  try {
    mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
    writeFileSync(file, text, { flag: "wx", mode: 0o600 });
  } catch (trouble) {
    const code = (trouble as NodeJS.ErrnoException).code ?? "unknown";
    return {
      problem: `${file} cannot be written (${code}): give dryline a folder it may write with DRYLINE_HOME`,
    };
  }
  return { file };
}
