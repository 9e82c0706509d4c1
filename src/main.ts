/**
 * The entry of the command `dryline`: reads the words typed and hands over.
 * It must stay small, since every command pays for what is loaded here.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { findPackageRoot } from "./workshop/package-root.ts";

function readVersion(): string {
  const manifest: { version: string } = JSON.parse(
    readFileSync(join(findPackageRoot(), "package.json"), "utf8"),
  );
  return manifest.version;
}

if (process.argv[2] === "--version") {
  console.log(readVersion());
} else {
  console.log("dryline: nothing is hanging yet.");
}
