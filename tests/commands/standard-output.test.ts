import { PassThrough } from "node:stream";
import { expect, test } from "vitest";
import { isReaderGone, StandardOutput } from "../../src/commands/standard-output.ts";

function trouble(code: string): Error {
  return Object.assign(new Error(code), { code });
}

function neverAsked(): never {
  throw new Error("a stream was made");
}

test("text is written until all of it is taken, without a stream of Node's", () => {
  const taken: string[] = [];
  // A pipe takes what it has room for: here 4 bytes at a time.
  const out = new StandardOutput(1, neverAsked, (descriptor, bytes) => {
    taken.push(`${descriptor}:${bytes.subarray(0, 4).toString("latin1")}`);
    return Math.min(4, bytes.length);
  });
  out.write("14 hangs\n");
  expect(taken).toEqual(["1:14 h", "1:angs", "1:\n"]);
  expect(out.mayWait).toBe(false);
});

test("a pipe that is full gets the rest, and all that follows, from Node's stream in order", () => {
  const stream = new PassThrough();
  let direct = 0;
  const out = new StandardOutput(
    1,
    () => stream,
    (_, bytes) => {
      if (direct > 0) throw trouble("EAGAIN");
      direct = Math.min(5, bytes.length);
      return direct;
    },
  );
  // "é" is two bytes, and the fifth byte parts it: bytes are counted, not letters.
  out.write("14: é hangs\n");
  out.write("15: dries\n");
  const rest = stream.read() as Buffer;
  expect(Buffer.concat([Buffer.from("14: é").subarray(0, 5), rest]).toString()).toBe(
    "14: é hangs\n15: dries\n",
  );
  expect(out.mayWait).toBe(true);
});

test("a reader that has gone is told from every other trouble", () => {
  const gone = new StandardOutput(2, neverAsked, () => {
    throw trouble("EPIPE");
  });
  const full = new StandardOutput(2, neverAsked, () => {
    throw trouble("ENOSPC");
  });
  const told = [gone, full].map((out) => {
    try {
      out.write("14 hangs\n");
      return "written";
    } catch (thrown) {
      return isReaderGone(thrown);
    }
  });
  expect(told).toEqual([true, false]);
});
