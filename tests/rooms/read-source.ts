/**
 * Reads one TypeScript source for what the rule of the rooms is about: its imports, where it reads the world, and what
 * it keeps.
 */
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
  "setImmediate",
  "queueMicrotask",
  "fetch",
]);

/** Methods that answer by the zone or the language of the machine, and those that draw from its chance. */
const IMPURE_METHOD =
  /^(get(Timezone|FullYear|Month|Date|Day|Hours|Minutes|Seconds)|toLocale|toDateString$|toTimeString$|resolvedOptions$|random[A-Z]|getRandomValues$)/;

/**
 * Where a source reads or touches the world without importing anything: the clock, the machine's zone, chance, the file's
 * own place, `process`, the console. Comments and strings do not count.
 */
export function readWorldUses(fileName: string, source: string): Found[] {
  const textOf = ({ start, end }: Span): string => source.slice(start, end).replace(/^globalThis\./, "");
  return walk(fileName, source, (node) => {
    switch (node.type) {
      case "CallExpression":
      case "NewExpression": {
        const called = textOf(node.callee);
        // Of a year, a month and so on it makes a moment by the machine's zone.
        if (called === "Date") return node.arguments.length === 1 ? undefined : "new Date()";
        const method = /(\w+)$/.exec(called)?.[1] ?? "";
        return impureCalls.has(called) || IMPURE_METHOD.test(method) ? `${called}()` : undefined;
      }
      case "VariableDeclarator":
        // `const { env } = process;`
        return node.id.type === "ObjectPattern" && node.init && textOf(node.init) === "process"
          ? "process"
          : undefined;
      case "MemberExpression": {
        const owner = textOf(node.object);
        if (owner === "process" || owner === "import.meta") return textOf(node);
        return owner === "console" ? "console" : undefined;
      }
      default:
        return undefined;
    }
  });
}

/**
 * What a module keeps at its top level and could change: a `let`, or a collection that begins empty and is not said to be
 * read-only. Each bundle has its own copy of a module, so what one keeps another would not see.
 */
export function readKeptState(fileName: string, source: string): Found[] {
  const { program } = parse(fileName, source);
  return program.body.flatMap((statement) => {
    const declared = statement.type === "ExportNamedDeclaration" ? statement.declaration : statement;
    if (declared?.type !== "VariableDeclaration") return [];
    return declared.declarations.flatMap(({ id, init, start }) => {
      const type = id.typeAnnotation === null ? "" : source.slice(id.start, id.end);
      const kept = declared.kind === "let" || (init && isEmptyCollection(init) && !/readonly/i.test(type));
      return kept ? [{ line: lineOf(source, start), text: source.slice(id.start, id.end) }] : [];
    });
  });
}

function isEmptyCollection(node: Node): boolean {
  if (node.type === "ArrayExpression") return node.elements.length === 0;
  if (node.type === "ObjectExpression") return node.properties.length === 0;
  if (node.type !== "NewExpression" || node.arguments.length > 0) return false;
  return ["Array", "Map", "Set", "WeakMap", "WeakSet"].some((name) => isNamed(node.callee, name));
}

/** Visits every node and keeps what `find` names, with its line. */
function walk(fileName: string, source: string, find: (node: Node) => string | undefined): Found[] {
  const { program } = parse(fileName, source);
  const found: Found[] = [];
  const visit = (node: Node): void => {
    const text = find(node);
    if (text !== undefined) found.push({ line: lineOf(source, node.start), text });
    const parts = node as unknown as Record<string, Node | (Node | null)[] | null>;
    for (const key of visitorKeys[node.type] ?? []) {
      for (const part of [parts[key] ?? []].flat()) if (part !== null) visit(part);
    }
  };
  visit(program);
  return found;
}

function parse(fileName: string, source: string): ReturnType<typeof parseSync> {
  const parsed = parseSync(fileName, source);
  const wrong = parsed.errors.map(({ message }) => message);
  if (wrong.length > 0) throw new Error(`${fileName}: ${wrong.join("; ")}`);
  return parsed;
}

function lineOf(source: string, offset: number): number {
  return source.slice(0, offset).split("\n").length;
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
