import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Taste } from "./taste.ts";
import { tasteFrom } from "./taste.ts";

/** The file conf keeps; read without conf, whose schema library costs 23 ms at every start. */
const FILE = "config.json";

/**
 * The maker's taste; of a missing file, or of what is damaged in it, the usual.
 *
 * @returns with it, as a sentence, why it could not be read whole; null: it was
 */
export function readTaste(folder: string): { readonly taste: Taste; readonly trouble: string | null } {
  const path = join(folder, FILE);
  let text: string;
  try {
    text = readFileSync(path, "utf8");
  } catch {
    return { taste: tasteFrom(null).taste, trouble: null };
  }
  try {
    const { taste, strange } = tasteFrom(JSON.parse(text));
    const trouble =
      strange.length === 0
        ? null
        : `${path} says of ${strange.join(", ")} what is not understood, so the usual is taken: correct it, or take it out.`;
    return { taste, trouble };
  } catch {
    return {
      taste: tasteFrom(null).taste,
      trouble: `${path} is not JSON any more, so the usual taste is taken: correct it, or delete it.`,
    };
  }
}

/**
 * Keeps one taste in the settings file (made with its folder when missing).
 *
 * @returns why it could not be kept; null: it is
 */
export async function writeTaste<K extends keyof Taste>(
  folder: string,
  key: K,
  value: Taste[K],
): Promise<string | null> {
  const { default: Conf } = await import("conf");
  try {
    new Conf<Taste>({ cwd: folder, configName: "config", clearInvalidConfig: true }).set(key, value);
    return null;
  } catch (trouble) {
    const { code } = trouble as NodeJS.ErrnoException;
    // Without a code of the file system it is our own mistake.
    if (code === undefined) throw trouble;
    return `${join(folder, FILE)} cannot be written (${code}): allow writing it and its folder, or set DRYLINE_HOME`;
  }
}
