/** Reads one TypeScript source for what the rule of the rooms is about: its imports, and where it reads the world. */
import ts from "typescript";

/** Something found in a source, at its line (counted from 1). */
export type Found = { line: number; text: string };

/**
 * Every module a source names: static imports, re-exports, dynamic imports, `import("x").Type`, `require`, and
 * `new URL("x", import.meta.url)`. A dynamic import whose module is computed is given as `computed import`.
 */
export function readImports(fileName: string, source: string): Found[] {
  return walk(fileName, source, (node) => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return literal(node.moduleSpecifier);
    if (ts.isImportEqualsDeclaration(node) && ts.isExternalModuleReference(node.moduleReference)) {
      return literal(node.moduleReference.expression);
    }
    if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
      return literal(node.argument.literal);
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      return literal(node.arguments[0]) ?? "computed import";
    }
    if (ts.isCallExpression(node) && ts.isIdentifier(node.expression) && node.expression.text === "require") {
      return literal(node.arguments[0]) ?? "computed import";
    }
    if (ts.isNewExpression(node) && node.expression.getText() === "URL") return literal(node.arguments?.[0]);
    return undefined;
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
  return walk(fileName, source, (node) => {
    if (ts.isCallExpression(node) && impureCalls.has(node.expression.getText())) {
      return `${node.expression.getText()}()`;
    }
    const making = ts.isNewExpression(node) || ts.isCallExpression(node);
    if (making && node.expression.getText() === "Date" && (node.arguments?.length ?? 0) === 0)
      return "new Date()";
    if (!ts.isPropertyAccessExpression(node) && !ts.isElementAccessExpression(node)) return undefined;
    const owner = node.expression.getText().replace(/^globalThis\./, "");
    if (owner === "process") return node.getText();
    return owner === "console" ? "console" : undefined;
  });
}

/** Visits every node and keeps what `find` names, with its line. */
function walk(fileName: string, source: string, find: (node: ts.Node) => string | undefined): Found[] {
  const kind = fileName.endsWith("x") ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const file = ts.createSourceFile(fileName, source, ts.ScriptTarget.ES2023, true, kind);
  const found: Found[] = [];
  const visit = (node: ts.Node): void => {
    const text = find(node);
    if (text !== undefined) {
      found.push({ line: file.getLineAndCharacterOfPosition(node.getStart()).line + 1, text });
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

function literal(node: ts.Node | undefined): string | undefined {
  return node !== undefined && ts.isStringLiteralLike(node) ? node.text : undefined;
}
