import { existsSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { driver } from "./driver.mjs";

/** Where the older driver's installation puts its native part. Left to itself that driver tries a dozen places first. */
const older = "better-sqlite3";
const usualPlace = `${older}/build/Release/better_sqlite3.node`;

/** Opens an SQLite file that is there already. Throws what the driver throws, also when its native part is missing. */
export function openDatabase(path: string, options: Database.Options = {}): Database.Database {
  return new Database(path, { ...options, fileMustExist: true, ...nativePart() });
}

/** Opens the bytes of an SQLite file, in memory. Throws as `openDatabase` does. */
export function openBytes(bytes: Buffer): Database.Database {
  return new Database(bytes, nativePart());
}

function nativePart(): Database.Options {
  const native = findNativePart();
  return native === null ? {} : { nativeBinding: native };
}

/** Null: the newer driver brings it, or it is not in its usual place: the driver must search, and say so when it finds none. */
function findNativePart(): string | null {
  if (driver !== older) return null;
  // From dist/, where the packages are this one's own. Node's way of finding a package takes longer than all the opening.
  const near = join(import.meta.dirname, "../node_modules", usualPlace);
  if (existsSync(near)) return near;
  try {
    const { createRequire } = globalThis.process.getBuiltinModule("node:module");
    return createRequire(import.meta.filename).resolve(usualPlace);
  } catch {
    return null;
  }
}
