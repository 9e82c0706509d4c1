import { Terminal } from "@xterm/headless";
import fc from "fast-check";
import { expect, test } from "vitest";
import { Presenter } from "../../src/dashboard/presenter.ts";

const size = { columns: 30, rows: 6 };

/** A presenter on a terminal in memory, with the bytes it wrote. */
function makeScreen(screen = size) {
  const terminal = new Terminal({ cols: screen.columns, rows: screen.rows, allowProposedApi: true });
  const written: string[] = [];
  const presenter = new Presenter((text) => written.push(text), screen);
  let sent = 0;
  const settle = async (): Promise<string[]> => {
    for (; sent < written.length; sent++) {
      await new Promise<void>((resolve) => terminal.write(written[sent] ?? "", resolve));
    }
    return linesOf(terminal);
  };
  return { terminal, written, presenter, settle };
}

function linesOf(terminal: Terminal): string[] {
  return Array.from({ length: terminal.rows }, (_, row) => {
    const { active } = terminal.buffer;
    return (
      active
        .getLine(active.baseY + row)
        ?.translateToString()
        .trimEnd() ?? ""
    );
  });
}

/** What a terminal shows that is cleared and given the whole frame at once. */
async function paintWhole(frame: string, screen = size): Promise<{ lines: string[]; looks: string[] }> {
  const terminal = new Terminal({ cols: screen.columns, rows: screen.rows, allowProposedApi: true });
  const shown = frame.split("\n").slice(0, screen.rows).join("\r\n");
  await new Promise<void>((resolve) => terminal.write(shown, resolve));
  return { lines: linesOf(terminal), looks: looksOf(terminal) };
}

/** Which cells that show something are bold, inverse or coloured, so that styles are compared too. */
function looksOf(terminal: Terminal): string[] {
  return Array.from({ length: terminal.rows }, (_, row) => {
    const line = terminal.buffer.active.getLine(terminal.buffer.active.baseY + row);
    let looks = "";
    for (let column = 0; column < terminal.cols; column++) {
      const cell = line?.getCell(column);
      if (cell === undefined) break;
      looks += `${cell.isBold()}${cell.isInverse()}${cell.isDim()}${cell.getFgColor()} `;
    }
    return looks;
  });
}

const style = fc.constantFrom("", "\u001b[1m", "\u001b[7m", "\u001b[2m", "\u001b[33m", "\u001b[1m\u001b[32m");
const word = fc.stringMatching(/^[ -~]{0,9}$/);
const piece = fc.tuple(style, word).map(([on, text]) => (on === "" ? text : `${on}${text}\u001b[0m`));
const wide = fc.constantFrom("é", "鮎 lure", "ü 9", "e\u0301x");
const row = fc.array(fc.oneof({ weight: 9, arbitrary: piece }, { weight: 1, arbitrary: wide }), {
  maxLength: 3,
});
const frame = fc.array(row, { maxLength: 8 }).map((rows) => rows.map((parts) => parts.join("")).join("\n"));

test("whatever frames follow one another, the terminal shows the last as if painted whole", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(frame, { minLength: 1, maxLength: 6 }), async (frames) => {
      const { presenter, settle, terminal } = makeScreen();
      presenter.enter();
      for (const one of frames) presenter.show(one);
      const lines = await settle();
      const whole = await paintWhole(frames.at(-1) ?? "");
      expect(lines).toEqual(whole.lines);
      expect(looksOf(terminal)).toEqual(whole.looks);
    }),
    { numRuns: 150 },
  );
});

test("a frame taller than the screen is cut and scrolls nothing away", async () => {
  const { presenter, settle, terminal } = makeScreen();
  presenter.enter();
  presenter.show("1\n2\n3\n4\n5\n6\n7\n8");
  expect(await settle()).toEqual(["1", "2", "3", "4", "5", "6"]);
  expect(terminal.buffer.active.baseY).toBe(0);
});

test("after a resize everything is painted again, though no line changed", async () => {
  const { presenter, settle, terminal, written } = makeScreen();
  presenter.enter();
  presenter.show("one\ntwo");
  await settle();
  terminal.resize(40, 8);
  terminal.write("\u001b[2J");
  presenter.resize({ columns: 40, rows: 8 });
  presenter.show("one\ntwo");
  expect((await settle()).slice(0, 3)).toEqual(["one", "two", ""]);
  expect(written.at(-1)).toContain("\u001b[2J");
});

test("a frame that is the same writes nothing, and a digit that changed writes little", () => {
  const { presenter, written } = makeScreen();
  presenter.enter();
  presenter.show("opens 4 h 22");
  const before = written.length;
  presenter.show("opens 4 h 22");
  expect(written.length).toBe(before);
  presenter.show("opens 4 h 21");
  // The marks of a synchronised update (8 + 8), the place (6 or 7) and one digit.
  expect(written.at(-1)).toBe("\u001b[?2026h\u001b[1;12H1\u001b[?2026l");
});

test("each frame is one write between the marks of a synchronised update", () => {
  const { presenter, written } = makeScreen();
  presenter.enter();
  presenter.show("a\nb\nc");
  presenter.show("x\nb\nz");
  expect(written).toHaveLength(3);
  for (const text of written.slice(1)) {
    expect(text.startsWith("\u001b[?2026h")).toBe(true);
    expect(text.endsWith("\u001b[?2026l")).toBe(true);
  }
});

test("leaving gives back the screen, the cursor and plain letters, and only once", async () => {
  const { presenter, written, settle, terminal } = makeScreen();
  terminal.write("before");
  presenter.enter();
  presenter.show("dashboard");
  presenter.leave();
  presenter.leave();
  presenter.show("late frame");
  expect((await settle())[0]).toBe("before");
  expect(terminal.buffer.active.type).toBe("normal");
  expect(written.filter((text) => text.includes("?1049l"))).toHaveLength(1);
  expect(written.at(-1)).toContain("\u001b[?25h");
});
