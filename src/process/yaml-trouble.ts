import type { YAMLError } from "yaml";
import { showValue } from "./problem.ts";

/** Far more than a process needs; a larger file is something else. */
const MOST_LETTERS = 64_000;
const DEEPEST_INDENT = 60;
const MOST_MARKS_A_LINE = 250;
const DEEPEST_BRACKETS = 20;

/** Why a file must not be given to the YAML library at all; line from 1. */
interface Trouble {
  readonly line: number;
  readonly what: string;
  readonly expected: string;
}

/**
 * Looks for what would exhaust the YAML library. It descends by calling itself, and a file nested some thousand deep
 * ends the whole program, past any catching; so nesting is bounded here by what can bring it about: indent, marks on
 * one line, and brackets.
 */
export function findTrouble(text: string): Trouble | null {
  if (text.length > MOST_LETTERS) {
    return {
      line: 1,
      what: `the file has over ${MOST_LETTERS} letters`,
      expected: "split it in several files",
    };
  }
  let brackets = 0;
  for (const [index, line] of text.split("\n").entries()) {
    const marks = line.match(/[-?:](?=\s|$)/g)?.length ?? 0;
    brackets = Math.max(0, brackets + count(line, /[[{]/g) - count(line, /[\]}]/g));
    // Marks in text nest nothing, but no line of a real file has so many.
    const deep = indentOf(line) > DEEPEST_INDENT || brackets > DEEPEST_BRACKETS || marks > MOST_MARKS_A_LINE;
    if (deep) return { line: index + 1, what: "it is nested too deep", expected: "write it flatter" };
  }
  return null;
}

function indentOf(line: string): number {
  return line.search(/[^ \t]|$/);
}

function count(line: string, mark: RegExp): number {
  return line.match(mark)?.length ?? 0;
}

const SAID: Readonly<Record<string, readonly [what: string, expected: string]>> = {
  BAD_INDENT: [
    "the indent does not fit the lines around it",
    "indent by spaces, the words of one thing alike",
  ],
  BAD_SCALAR_START: ["a value begins with a mark that means something else", "put the text in quotes"],
  BLOCK_AS_IMPLICIT_KEY: [
    "a second colon stands in one line",
    "put text with a colon in quotes, or begin a new line",
  ],
  BLOCK_IN_FLOW: ["a list or words with colons stand loose within brackets", "close the brackets first"],
  DUPLICATE_KEY: ["a word is said twice", "say it once"],
  MISSING_CHAR: ["a closing mark is missing", "close what was opened: a quote, a bracket, a comma between"],
  MULTILINE_IMPLICIT_KEY: [
    "a word before a colon runs over several lines",
    "write a word and its colon in one line",
  ],
  MULTIPLE_DOCS: ["a second document begins (---)", "write one thing a file"],
  TAB_AS_INDENT: ["a tab indents", "indent by spaces"],
  UNEXPECTED_TOKEN: ["something stands where nothing can", "put text in quotes, or take it out"],
};

/** An error of the YAML library in words for people. */
export function sayYamlError(error: YAMLError): { what: string; expected: string } {
  const [what, expected] = SAID[error.code] ?? [
    `it cannot be read as YAML: ${showValue(error.message)}`,
    "put text with special marks in quotes",
  ];
  return { what, expected };
}
