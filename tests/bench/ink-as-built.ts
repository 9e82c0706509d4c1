/** Ink as it is built into dist/, in the place of its source: with React for production, whose development build leaks. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { mountInk as Mount } from "../../src/dashboard/mount-ink.tsx";
import { builtFolder, stampFile } from "../../src/fresh.mjs";

/** Bundles of earlier builds may still lie there: the program of the last names its own. */
const dashboard = readFileSync(join(builtFolder, stampFile), "utf8").trim().split("  ").at(-1) ?? "";
const [name = ""] = /mount-ink-\w+\.mjs/.exec(readFileSync(join(builtFolder, dashboard), "utf8")) ?? [];

const built = (await import(pathToFileURL(join(builtFolder, name)).href)) as { mountInk: typeof Mount };

export const mountInk = built.mountInk;
