import { readFileSync } from "node:fs";

/**
 * The file that was named, if what was said is the name of a file and not of a thing in one: it ends in .yaml or .yml,
 * or has a slash. Null: no such name.
 */
export function readFileNamed(
  said: string,
): { readonly file: string; readonly text: string } | { readonly problem: string } | null {
  if (!/\.ya?ml$|[\\/]/.test(said)) return null;
  try {
    return { file: said, text: readFileSync(said, "utf8") };
  } catch (trouble) {
    const code = (trouble as NodeJS.ErrnoException).code ?? "unknown";
    return { problem: code === "ENOENT" ? `there is no file ${said}` : `${said} cannot be read (${code})` };
  }
}
