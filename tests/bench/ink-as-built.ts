/** Ink as it is built into dist/, in the place of its source: with React for production, whose development build leaks. */
import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { mountInk as Mount } from "../../src/dashboard/mount-ink.tsx";
import { builtFolder } from "../../src/fresh.mjs";

/** Bundles of earlier builds may still lie there. */
const [newest = ""] = readdirSync(builtFolder)
  .filter((name) => /^mount-ink-\w+\.mjs$/.test(name))
  .map((name) => join(builtFolder, name))
  .toSorted((a, b) => statSync(b).mtimeMs - statSync(a).mtimeMs);

const built = (await import(pathToFileURL(newest).href)) as { mountInk: typeof Mount };

export const mountInk = built.mountInk;
