import type * as z from "zod/mini";
import { nearestWord } from "./nearest.ts";
import { type Finding, showValue } from "./problem.ts";

type Issue = z.core.$ZodIssue;

/**
 * What the schema found wrong, in words. The field's own message says what would be right; added here is what is wrong
 * and, for a word that is not known, the nearest that is.
 *
 * @param issues as zod tells them
 * @param source the data they are about
 */
export function explainIssues(issues: readonly Issue[], source: unknown): Finding[] {
  return issues.flatMap((issue) => explainIssue(issue, issue.path, source));
}

function explainIssue(issue: Issue, path: readonly PropertyKey[], source: unknown): Finding[] {
  switch (issue.code) {
    case "unrecognized_keys":
      return issue.keys.map((key) => explainUnknown(key, path, issue.message.split(", "), source));
    case "invalid_key":
      return [{ path, atKey: true, what: `${label(path)} cannot be a word here`, expected: sayFirst(issue) }];
    case "invalid_union":
      return explainUnion(issue, path, source);
    case "invalid_value":
      return [
        explainValue(path, source, suggest(valueAt(source, path), issue.values.map(String), issue.message)),
      ];
    default:
      return [explainValue(path, source, issue.message)];
  }
}

/** The reasons of that form of several which the value was meant to have: the one that takes its kind of value. */
function explainUnion(
  issue: Issue & { code: "invalid_union" },
  path: readonly PropertyKey[],
  source: unknown,
) {
  const meant = issue.errors.find(
    (reasons) => !reasons.some((reason) => reason.path.length === 0 && reason.code === "invalid_type"),
  );
  if (meant === undefined) return [explainValue(path, source, issue.message)];
  return meant.flatMap((reason) => explainIssue(reason, [...path, ...reason.path], source));
}

function explainUnknown(
  key: string,
  path: readonly PropertyKey[],
  known: readonly string[],
  source: unknown,
): Finding {
  const nearest = nearestWord(key, known);
  // `{ at: 21 °C, 50 % }` makes of "50 %" a word that says nothing.
  const quoting = valueAt(source, [...path, key]) === null ? "; put text that has a comma in quotes" : "";
  return {
    path: [...path, key],
    atKey: true,
    what: `${showValue(key)} is not known here`,
    expected: nearest === null ? `write one of ${known.join(", ")}${quoting}` : `did you mean ${nearest}?`,
  };
}

function explainValue(path: readonly PropertyKey[], source: unknown, expected: string): Finding {
  const value = valueAt(source, path);
  if (path.length === 0) return { path, what: `the file says ${showValue(value)}`, expected };
  if (value === undefined) return { path: path.slice(0, -1), what: `${label(path)} is missing`, expected };
  if (value === null) {
    return { path, what: `${label(path)} says nothing (what follows a # is a comment)`, expected };
  }
  return { path, what: `${label(path)} says ${showValue(value)}`, expected };
}

function suggest(value: unknown, known: readonly string[], expected: string): string {
  const nearest = typeof value === "string" ? nearestWord(value, known) : null;
  return nearest === null ? expected : `did you mean ${nearest}?`;
}

function sayFirst(issue: Issue & { code: "invalid_key" }): string {
  return issue.issues[0]?.message ?? issue.message;
}

/** What a value is called: `"wait"`, `"look" (2nd)`. */
function label(path: readonly PropertyKey[]): string {
  const last = path.at(-1);
  if (typeof last !== "number") return showValue(String(last));
  const list = path.findLast((key) => typeof key === "string");
  return `entry ${last + 1} of ${showValue(String(list))}`;
}

/** The value at a path; undefined where it leads nowhere. */
function valueAt(source: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === "object" && value !== null && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined,
    source,
  );
}
