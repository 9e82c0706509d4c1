import { EventEmitter } from "node:events";
import type { ScreenSize } from "./presenter.ts";

/**
 * The standard output Ink is given: it hands each plain frame on and knows only its size. Ink's `debug` mode
 * writes whole frames; the rest of what it writes (showing the cursor when it ends) is no frame.
 */
export class InkStdout extends EventEmitter {
  readonly isTTY = true;
  columns: number;
  rows: number;
  readonly #frame: (frame: string) => void;

  constructor(size: ScreenSize, frame: (frame: string) => void) {
    super();
    this.columns = size.columns;
    this.rows = size.rows;
    this.#frame = frame;
  }

  write(text: string): boolean {
    if (!text.startsWith("\u001b[?25")) this.#frame(text);
    return true;
  }

  /** Tells Ink of another size. */
  resize({ columns, rows }: ScreenSize): void {
    this.columns = columns;
    this.rows = rows;
    this.emit("resize");
  }
}
