/**
 * The rule of the rooms: imports run downward only, only four rooms touch the world, and no module keeps changing state
 * at its top level. The list of rooms is held here and nowhere else.
 */
import { readdirSync, readFileSync } from "node:fs";
import { isBuiltin } from "node:module";
import { join, posix, relative, sep } from "node:path";
import { describe, expect, test } from "vitest";
import { newerDriver } from "../src/journal/driver.mjs";
import { readImports, readKeptState, readWorldUses } from "./rooms/read-source.ts";

/** From the top down; rooms on one line are siblings and never import each other. */
const rooms = [
  ["dashboard", "commands"],
  ["words"],
  ["workshop"],
  ["acts"],
  ["pace"],
  ["simulate"],
  ["plan"],
  ["safety"],
  ["shop"],
  ["learned"],
  ["journal"],
  ["cure"],
  ["process"],
  ["time"],
];

const roomsThatTouchTheWorld = new Set(["dashboard", "commands", "workshop", "journal"]);

/** Node's own modules that only compute. Every other one reads or changes something outside. */
const pureBuiltins = new Set(["buffer", "crypto", "string_decoder", "util"]);

/** The packages and the module of Node by which an SQLite file can be opened: src/journal/driver.mjs. */
const sqliteModules = new Set(["better-sqlite3", newerDriver, "node:sqlite", "sqlite"]);

/** In plan/ only plan-shop.ts knows the shop: published problems enter by the same door as real ones. */
const roomsOnlyPlanShopMayImport = new Set(["shop", "learned", "safety", "cure"]);

const longestFile = 300;

const packageRoot = join(import.meta.dirname, "..");

/** What is wrong with one source, each problem as "file:line what". `file` is relative to src/, with `/`. */
function checkSource(file: string, source: string): string[] {
  const room = roomOf(file);
  if (room === undefined) return [];
  if (floorOf(room) < 0) return [`${file}:1 is in no known room`];
  const pure = !roomsThatTouchTheWorld.has(room);
  const uses = pure ? readWorldUses(file, source) : [];
  const kept = readKeptState(file, source);
  const imports = readImports(file, source).flatMap(({ line, text }) =>
    checkImport(file, room, text).map((wrong) => ({ line, text: wrong })),
  );
  return [
    ...imports,
    ...uses.map(({ line, text }) => ({ line, text: `${room} is pure, but reads ${text}` })),
    ...kept.map(({ line, text }) => ({ line, text: `keeps changing state at its top level: ${text}` })),
  ].map(({ line, text }) => `${file}:${line} ${text}`);
}

function checkImport(file: string, room: string, specifier: string): string[] {
  if (specifier.startsWith(".")) return checkNeighbour(file, room, specifier);
  if (specifier === "computed import") return ["imports a module whose name is computed"];
  if (sqliteModules.has(specifier) && room !== "journal") return ["opens SQLite outside journal"];
  const builtin = specifier.replace(/^node:/, "").split("/")[0] ?? "";
  const worldly = isBuiltin(specifier) && !pureBuiltins.has(builtin);
  return worldly && !roomsThatTouchTheWorld.has(room) ? [`${room} is pure, but imports ${specifier}`] : [];
}

/** Judges an import of our own code. */
function checkNeighbour(file: string, room: string, specifier: string): string[] {
  const target = posix.join(posix.dirname(file), specifier);
  const targetRoom = roomOf(target);
  if (target.startsWith("../")) return [`imports ${target} from outside src`];
  if (targetRoom === undefined) return [`imports upward, from ${room} to ${target}`];
  if (floorOf(targetRoom) < 0) return [`imports ${target}, which is in no known room`];
  if (targetRoom === room) return [];
  if (floorOf(targetRoom) === floorOf(room)) return [`imports sideways, from ${room} to ${targetRoom}`];
  if (floorOf(targetRoom) < floorOf(room)) return [`imports upward, from ${room} to ${targetRoom}`];
  if (room === "plan" && file !== "plan/plan-shop.ts" && roomsOnlyPlanShopMayImport.has(targetRoom)) {
    return [`only plan/plan-shop.ts may import ${targetRoom}`];
  }
  return [];
}

/** @returns undefined for the files directly in src/, which stand above all rooms */
function roomOf(file: string): string | undefined {
  return file.includes("/") ? file.split("/")[0] : undefined;
}

/** @returns 0 for the top rooms, counting downward; -1 for no room */
function floorOf(room: string): number {
  return rooms.findIndex((floor) => floor.includes(room));
}

function sourcesUnder(folder: string): { file: string; source: string }[] {
  return readdirSync(join(packageRoot, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx|mts|mjs|js)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({
      file: relative(join(packageRoot, folder), path).split(sep).join("/"),
      source: readFileSync(path, "utf8"),
    }));
}

describe("our own sources", () => {
  test("import downward only, touch the world in four rooms alone, and keep no changing state", () => {
    const sources = sourcesUnder("src");
    expect(sources.map(({ file }) => file)).toContain("main.ts");
    expect(sources.flatMap(({ file, source }) => checkSource(file, source))).toEqual([]);
  });

  test(`have at most ${longestFile} lines a file, tests too`, () => {
    const tooLong = [...sourcesUnder("src"), ...sourcesUnder("tests")]
      .map(({ file, source }) => ({ file, lines: source.trimEnd().split("\n").length }))
      .filter(({ lines }) => lines > longestFile);
    expect(tooLong).toEqual([]);
  });
});

describe("the check itself", () => {
  test.each([
    ["shop/a.ts", 'import { takePiece } from "../acts/take.ts";', "imports upward, from shop to acts"],
    ["time/a.ts", 'import type { Piece } from "../shop/piece.ts";', "imports upward, from time to shop"],
    ["time/a.ts", 'type P = import("../shop/piece.ts").Piece;', "imports upward, from time to shop"],
    ["time/a.ts", 'export * from "../cure/stage.ts";', "imports upward, from time to cure"],
    ["cure/a.ts", 'const x = await import("../plan/plan.ts");', "imports upward, from cure to plan"],
    ["words/a.ts", 'import "../main.ts";', "imports upward, from words to main.ts"],
    ["commands/a.ts", 'import "../dashboard/app.tsx";', "imports sideways, from commands to dashboard"],
    ["dashboard/a.tsx", 'import "../commands/now.ts";', "imports sideways, from dashboard to commands"],
    ["plan/a.ts", 'import { fold } from "../shop/fold.ts";', "only plan/plan-shop.ts may import shop"],
    [
      "plan/plan.ts",
      'import type { Rate } from "../cure/rate.ts";',
      "only plan/plan-shop.ts may import cure",
    ],
    ["shop/a.ts", 'import "../attic/old.ts";', "imports attic/old.ts, which is in no known room"],
    ["attic/a.ts", "export {};", "is in no known room"],
    ["words/a.ts", 'import "../../tests/helper.ts";', "imports ../tests/helper.ts from outside src"],
    ["process/a.ts", 'import { readFileSync } from "node:fs";', "process is pure, but imports node:fs"],
    ["words/a.ts", 'import { readFile } from "fs/promises";', "words is pure, but imports fs/promises"],
    ["acts/a.ts", 'import os from "node:os";', "acts is pure, but imports node:os"],
    [
      "plan/a.ts",
      'import { Worker } from "node:worker_threads";',
      "plan is pure, but imports node:worker_threads",
    ],
    ["workshop/a.ts", 'import Database from "better-sqlite3";', "opens SQLite outside journal"],
    ["shop/a.ts", 'const d = require("better-sqlite3");', "opens SQLite outside journal"],
    ["shop/a.ts", "const m = await import(name);", "imports a module whose name is computed"],
    ["shop/a.ts", "const now = Date.now();", "shop is pure, but reads Date.now()"],
    ["time/a.ts", "const now = new Date();", "time is pure, but reads new Date()"],
    ["time/a.ts", "const now = new Date;", "time is pure, but reads new Date()"],
    ["plan/a.ts", "const t = performance.now();", "plan is pure, but reads performance.now()"],
    ["simulate/a.ts", "const luck = Math.random();", "simulate is pure, but reads Math.random()"],
    ["words/a.ts", "const plain = process.env.NO_COLOR;", "words is pure, but reads process.env"],
    ["words/a.ts", 'console.log("14 hangs");', "words is pure, but reads console"],
    ["words/a.ts", "const { env } = process;", "words is pure, but reads process"],
    ["words/a.ts", "const { env } = globalThis.process;", "words is pure, but reads process"],
    ["time/a.ts", "const noon = new Date(2026, 2, 28, 12);", "time is pure, but reads new Date()"],
    ["time/a.ts", "const hour = moment.getHours();", "time is pure, but reads moment.getHours()"],
    [
      "words/a.ts",
      "const said = moment.toLocaleString();",
      "words is pure, but reads moment.toLocaleString()",
    ],
    ["process/a.ts", "const id = randomUUID();", "process is pure, but reads randomUUID()"],
    ["plan/a.ts", "globalThis.setImmediate(go);", "plan is pure, but reads setImmediate()"],
    ["process/a.ts", "const here = import.meta.dirname;", "process is pure, but reads import.meta.dirname"],
    ["process/a.ts", 'import { resolve } from "node:path";', "process is pure, but imports node:path"],
    ["workshop/a.ts", 'import D from "better-sqlite3-for-node-22";', "opens SQLite outside journal"],
    ["workshop/a.ts", 'import { DatabaseSync } from "node:sqlite";', "opens SQLite outside journal"],
    ["workshop/a.ts", "let last = 0;", "keeps changing state at its top level: last"],
    ["shop/a.ts", "export const seen = new Map();", "keeps changing state at its top level: seen"],
    ["shop/a.ts", "const tags: number[] = [];", "keeps changing state at its top level: tags: number[]"],
  ])("finds in %s: %s", (file, source, wrong) => {
    // The wrong line stands third, so its place is 3.
    expect(checkSource(file, `/** A docstring. */\n\n${source}\n`)).toEqual([
      `${file}:${file.startsWith("attic") ? 1 : 3} ${wrong}`,
    ]);
  });

  test.each([
    ["acts/a.ts", 'import { fold } from "../shop/fold.ts";\nimport { say } from "./say.ts";'],
    ["plan/plan-shop.ts", 'import type { Shop } from "../shop/shop.ts";\nimport "../cure/rate.ts";'],
    ["plan/a.ts", 'import type { Instant } from "../time/instant.ts";'],
    [
      "journal/sqlite-journal.ts",
      'import Database from "better-sqlite3";\nimport { statSync } from "node:fs";',
    ],
    ["workshop/clock.ts", "export const readClock = () => Date.now();"],
    ["process/hash.ts", 'import { createHash } from "node:crypto";'],
    ["shop/a.ts", "const day = new Date(seconds * 1000); // never Date.now() nor process.env"],
    ["time/a.ts", "const hour = day.getUTCHours();"],
    ["pace/a.ts", 'const process = piece.definition.name;\nnames.sort((a, b) => a.localeCompare(b, "en"));'],
    ["shop/a.ts", "const none: readonly Tag[] = [];\nfunction count() { let sum = 0; return sum; }"],
    ["main.ts", 'import { runCommand } from "./commands/command-line.ts";\nimport "./dashboard/app.tsx";'],
  ])("lets pass in %s: %s", (file, source) => {
    expect(checkSource(file, source)).toEqual([]);
  });
});
