import { render } from "ink";
import type { InkStdout } from "./ink-stdout.ts";
import { Screen, type Store } from "./screen.tsx";

/** Lets Ink draw the store's state and read the keys; gives how to end that. */
export function mountInk(parts: {
  readonly store: Store;
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: InkStdout;
  /** A component has thrown: Ink has ended by itself. */
  readonly fail: (trouble: unknown) => void;
}): () => void {
  const ink = render(<Screen store={parts.store} />, {
    stdout: parts.stdout as unknown as NodeJS.WriteStream,
    stdin: parts.stdin,
    debug: true,
    exitOnCtrlC: false,
    patchConsole: false,
  });
  ink.waitUntilExit().catch(parts.fail);
  return () => ink.unmount();
}
