/** Reads one TypeScript source for what the rule of the rooms is about: its imports, and where it reads the world. */
import { type Node, parseSync, type Span, visitorKeys } from "oxc-parser";

/** Something found in a source, at its line (counted from 1). */
export type Found = { line: number; text: string };

/**
 * Every module a source names: static imports, re-exports, dynamic imports, `import("x").Type`, `require`, and
 * `new URL("x", import.meta.url)`. A dynamic import whose module is computed is given as `computed import`.
 */
export function readImports(fileName: string, source: string): Found[] {
  return walk(fileName, source, (node) => {
    switch (node.type) {
      case "ImportDeclaration":
      case "ExportAllDeclaration":
      case "ExportNamedDeclaration":
      case "TSImportType":
        return literal(node.source);
      case "TSExternalModuleReference":
        return literal(node.expression);
      case "ImportExpression":
        return literal(node.source) ?? "computed import";
      case "CallExpression":
        return isNamed(node.callee, "require")
          ? (literal(node.arguments[0]) ?? "computed import")
          : undefined;
      case "NewExpression":
        return isNamed(node.callee, "URL") ? literal(node.arguments[0]) : undefined;
      default:
        return undefined;
    }
  });
}

const impureCalls = new Set([
  "Date.now",
  "Math.random",
  "performance.now",
  "setTimeout",
  "setInterval",
  "fetch",
]);

/**
 * Where a source reads or touches the world without importing anything: the clock, chance, `process`, the console.
 * Comments and strings do not count.
 */
export function readWorldUses(fileName: string, source: string): Found[] {
  const textOf = ({ start, end }: Span): string => source.slice(start, end);
  return walk(fileName, source, (node) => {
    if (node.type === "CallExpression" && impureCalls.has(textOf(node.callee))) {
      return `${textOf(node.callee)}()`;
    }
    if (node.type === "NewExpression" || node.type === "CallExpression") {
      return isNamed(node.callee, "Date") && node.arguments.length === 0 ? "new Date()" : undefined;
    }
    if (node.type !== "MemberExpression") return undefined;
    const owner = textOf(node.object).replace(/^globalThis\./, "");
    if (owner === "process") return textOf(node);
    return owner === "console" ? "console" : undefined;
  });
}

/** Visits every node and keeps what `find` names, with its line. */
function walk(fileName: string, source: string, find: (node: Node) => string | undefined): Found[] {
  const { program, errors } = parseSync(fileName, source);
  if (errors.length > 0) throw new Error(`${fileName}: ${errors.map(({ message }) => message).join("; ")}`);
  const found: Found[] = [];
  const visit = (node: Node): void => {
    const text = find(node);
    if (text !== undefined) found.push({ line: source.slice(0, node.start).split("\n").length, text });
    const parts = node as unknown as Record<string, Node | (Node | null)[] | null>;
    for (const key of visitorKeys[node.type] ?? []) {
      for (const part of [parts[key] ?? []].flat()) if (part !== null) visit(part);
    }
  };
  visit(program);
  return found;
}

function isNamed(node: Node, name: string): boolean {
  return node.type === "Identifier" && node.name === name;
}

/** The text of a string that is written out; undefined: there is none, or it is computed. */
function literal(node: Node | null | undefined): string | undefined {
  if (node?.type === "Literal" && typeof node.value === "string") return node.value;
  if (node?.type === "TemplateLiteral" && node.expressions.length === 0) return node.quasis[0]?.value.raw;
  return undefined;
}
