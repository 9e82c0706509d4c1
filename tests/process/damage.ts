/** Random damage to the text of a file, the same for the same seed. */

/** What slips of the hand, bad copies and bad intent put into files. */
const SCRAPS = [
  ":",
  ": ",
  "- ",
  "#",
  "\n",
  "\n\n",
  "\t",
  "  ",
  "{",
  "}",
  "[",
  "]",
  ",",
  "'",
  '"',
  "|",
  ">",
  "&a ",
  "*a",
  "!!str ",
  "? ",
  "%",
  "@",
  "`",
  "\u0000",
  "\u001b[2J",
  "\u202e",
  "\ud800",
  "\ufeff",
  "---\n",
  "...\n",
  "null",
  "~",
  "true",
  "0",
  "-1",
  "1e999",
  "NaN",
  ".inf",
  "9999999999999999999 min",
  "P1Y",
  "PT",
  "..",
  "4 h .. 4 h",
  "__proto__",
  "constructor",
  "<<: ",
  "toString",
  "while set up",
  "flash-off",
  "{colour}",
  "°",
  "½",
  "日本",
  "🎣",
  "a".repeat(600),
  "- ".repeat(300),
  "[".repeat(90),
];

/** A generator of whole numbers from 0 to below `bound` (mulberry32, public domain). */
export function seededPicker(seed: number): (bound: number) => number {
  let state = seed >>> 0;
  return (bound) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * bound);
  };
}

/** The text after one to four edits: letters lost, doubled, swapped or put in; lines lost, doubled or moved; ends torn off. */
export function damage(text: string, pick: (bound: number) => number): string {
  let damaged = text;
  for (let edits = 1 + pick(4); edits > 0; edits--) damaged = edit(damaged, pick);
  return damaged;
}

function edit(text: string, pick: (bound: number) => number): string {
  const at = pick(text.length + 1);
  const end = Math.min(text.length, at + 1 + pick(12));
  const scrap = SCRAPS[pick(SCRAPS.length)] ?? "";
  switch (pick(9)) {
    case 0:
      return text.slice(0, at) + text.slice(end);
    case 1:
      return text.slice(0, at) + scrap + text.slice(at);
    case 2:
      return text.slice(0, at) + scrap + text.slice(end);
    case 3:
      return text.slice(0, end) + text.slice(at);
    case 4:
      return text.slice(0, at);
    case 5:
      return text.slice(at);
    case 6:
      return text.slice(0, at) + String.fromCharCode(pick(0x250)) + text.slice(at + 1);
    default:
      return editLines(text.split("\n"), pick).join("\n");
  }
}

function editLines(lines: string[], pick: (bound: number) => number): string[] {
  const [from, to] = [pick(lines.length), pick(lines.length)];
  const line = lines[from] ?? "";
  switch (pick(4)) {
    case 0:
      return lines.toSpliced(from, 1);
    case 1:
      return lines.toSpliced(to, 0, line);
    case 2:
      return lines.toSpliced(from, 1).toSpliced(to, 0, line);
    default:
      return lines.with(from, `  ${line}`);
  }
}
