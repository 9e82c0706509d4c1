import {
  isAlias,
  isMap,
  isNode,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  type Pair,
  parseDocument,
  visit,
} from "yaml";
import type { Finding, Problem } from "./problem.ts";
import { findTrouble, sayYamlError } from "./yaml-trouble.ts";

/** A YAML file as plain data that remembers where each value stands. */
export interface SourceTree {
  /** Undefined where the file is not YAML at all; its problems then say why. */
  readonly value: unknown;
  /** What is wrong with the file as YAML, beside what it says. */
  readonly problems: readonly Problem[];
  /** The value is worth looking at: its problems, if any, are in single places. */
  readonly readable: boolean;
  /** Puts a finding at its place in the file. */
  place(finding: Finding): Problem;
}

/**
 * Reads YAML strictly: no aliases, anchors, tags, directives or second documents, and no word twice. With such slips
 * the rest is still worth checking; with broken YAML it is not.
 */
export function readSourceTree(text: string, file: string): SourceTree {
  const trouble = findTrouble(text);
  if (trouble !== null) {
    const problems = [
      { file, line: trouble.line, column: 1, what: trouble.what, expected: trouble.expected },
    ];
    return {
      value: undefined,
      problems,
      readable: false,
      place: (finding) => at(file, { line: 1, col: 1 }, finding),
    };
  }
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, version: "1.2" });
  const root = document.contents;
  const problems = document.errors.map((error) => at(file, lines.linePos(error.pos[0]), sayYamlError(error)));
  const readable = document.errors.every((error) => error.code === "DUPLICATE_KEY");
  if (document.directives?.yaml.explicit === true) problems.push(at(file, { line: 1, col: 1 }, DIRECTIVE));
  for (const { node, ...refusal } of refusedNodes(root)) {
    problems.push(at(file, lines.linePos(node.range?.[0] ?? 0), refusal));
  }
  return {
    value: readable ? toPlain(root) : undefined,
    problems,
    readable,
    place: (finding) => at(file, lines.linePos(findOffset(root, finding)), finding),
  };
}

type Saying = Pick<Finding, "what" | "expected">;

const DIRECTIVE: Saying = { what: "the file begins with a % line", expected: "leave that line out" };
const REPEATED: Saying = {
  what: "a name (& or *) stands for a value written elsewhere",
  expected: "write the value out",
};
const TAGGED: Saying = {
  what: "a value has a ! tag before it",
  expected: "leave the tag out, or put text in quotes",
};
const WORDLESS: Saying = {
  what: "what stands before a colon is not a plain word",
  expected: "write a word before the colon",
};

function at(file: string, place: { line: number; col: number }, { what, expected }: Saying): Problem {
  // The counter answers 0 for a place before its first line.
  return { file, line: Math.max(1, place.line), column: Math.max(1, place.col), what, expected };
}

/** Parts of YAML that make a file say more than the eye sees, and words that are no words. */
function refusedNodes(root: Node | null): (Saying & { node: Node })[] {
  const refused: (Saying & { node: Node })[] = [];
  visit(root, {
    // One visitor for all kinds: with one for maps beside it, this one would not be called for them.
    Node(_key, node) {
      if (isAlias(node) || node.anchor !== undefined) refused.push({ node, ...REPEATED });
      else if (node.tag !== undefined) refused.push({ node, ...TAGGED });
      for (const pair of isMap(node) ? node.items : []) {
        if (wordOf(pair) === null) refused.push({ node: isNode(pair.key) ? pair.key : node, ...WORDLESS });
      }
    },
  });
  return refused;
}

/** The word before the colon, as written; null where there is none, or one that no object can hold as its own. */
function wordOf(pair: Pair): string | null {
  const { key } = pair;
  if (!isScalar(key) || key.value === null) return null;
  const word = typeof key.value === "string" ? key.value : (key.source ?? String(key.value));
  return word === "__proto__" ? null : word;
}

/** Plain objects, lists and values; what was refused above is left out. */
function toPlain(node: unknown): unknown {
  if (isScalar(node)) return node.value;
  if (isSeq(node)) return node.items.map(toPlain);
  if (!isMap(node)) return null;
  const plain: Record<string, unknown> = {};
  for (const pair of node.items) {
    const word = wordOf(pair);
    // Of a word written twice, which is a problem of its own, the first counts.
    if (word !== null && !Object.hasOwn(plain, word)) plain[word] = toPlain(pair.value);
  }
  return plain;
}

/** Where a finding stands: its value, else what its value should stand in. */
function findOffset(root: Node | null, { path, atKey = false }: Finding): number {
  let node: unknown = root;
  let offset = root?.range?.[0] ?? 0;
  for (const [depth, key] of path.entries()) {
    const pair = isMap(node) ? node.items.find((item) => wordOf(item) === key) : undefined;
    const next = isSeq(node) ? node.items[Number(key)] : pair?.value;
    const shown =
      pair !== undefined && ((atKey && depth === path.length - 1) || !isNode(next)) ? pair.key : next;
    if (!isNode(shown)) break;
    offset = shown.range?.[0] ?? offset;
    node = next;
  }
  return offset;
}
