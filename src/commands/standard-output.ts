import { writeSync } from "node:fs";

/** Whoever read what we print has gone, as `head` does. */
export function isReaderGone(trouble: unknown): boolean {
  return trouble instanceof Error && "code" in trouble && trouble.code === "EPIPE";
}

/**
 * Writes to standard output (1) or standard error (2) at once. Node's stream object, which takes 3 to 5 ms of a cold
 * start to make, is made only where it is needed: on Windows, whose console wants another alphabet, and for a reader too
 * slow for a pipe that does not wait.
 */
export class StandardOutput {
  readonly #descriptor: 1 | 2;
  readonly #stream: () => NodeJS.WritableStream;
  readonly #write: (descriptor: number, bytes: Buffer) => number;
  #direct = globalThis.process.platform !== "win32";

  /** @param stream Node's own, whose errors are dealt with */
  constructor(
    descriptor: 1 | 2,
    stream: () => NodeJS.WritableStream,
    write: (descriptor: number, bytes: Buffer) => number = writeSync,
  ) {
    this.#descriptor = descriptor;
    this.#stream = stream;
    this.#write = write;
  }

  /** Throws what the write throws; isReaderGone tells the foreseeable. */
  write(text: string): void {
    let rest = Buffer.from(text);
    while (this.#direct && rest.length > 0) {
      try {
        rest = rest.subarray(this.#write(this.#descriptor, rest));
      } catch (trouble) {
        if (!(trouble instanceof Error && "code" in trouble && trouble.code === "EAGAIN")) throw trouble;
        this.#direct = false;
      }
    }
    if (rest.length > 0) this.#stream().write(rest);
  }

  /** Some text may still wait in Node's stream: ending the program now would lose it. */
  get mayWait(): boolean {
    return !this.#direct;
  }
}
