import * as z from "zod/mini";
import { explainIssues } from "./explain.ts";
import type { Finding, Problem } from "./problem.ts";
import { readSourceTree } from "./source-tree.ts";

/** What a file says, or everything that is wrong with it, in the order of its lines. */
export type Source<T> = { readonly fields: T } | { readonly problems: readonly Problem[] };

/**
 * The recipe of every file: read the YAML, hold it against the schema, then against itself, and tell all that is wrong
 * at once.
 *
 * @param crossCheck looks at the plain data, whatever the schema said of it
 */
export function readSource<S extends z.core.$ZodType>(
  text: string,
  file: string,
  schema: S,
  crossCheck: (source: unknown) => readonly Finding[],
): Source<z.output<S>> {
  const tree = readSourceTree(text, file);
  if (!tree.readable) return { problems: inOrder(tree.problems) };
  const read = z.safeParse(schema, tree.value);
  const wrong = read.success ? [] : explainIssues(read.error.issues, tree.value);
  const findings = [...wrong, ...crossCheck(tree.value)];
  const problems = [...tree.problems, ...findings.map((finding) => tree.place(finding))];
  if (problems.length > 0 || !read.success) return { problems: inOrder(problems) };
  return { fields: read.data };
}

function inOrder(problems: readonly Problem[]): Problem[] {
  return problems.toSorted((a, b) => a.line - b.line || a.column - b.column);
}
