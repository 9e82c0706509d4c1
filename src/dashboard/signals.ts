/** What the dashboard does when the world ends, stops or wakes it. */
export interface SignalActions {
  /** Ends with this exit code: 128 and the signal's number, as shells count. */
  readonly end: (code: number) => void;
  /** Gives the terminal back before the program is stopped. */
  readonly stop: () => void;
  readonly goOn: () => void;
}

const ENDING = { SIGTERM: 143, SIGHUP: 129, SIGINT: 130 } as const;

/** Listens for signals until `release`; `suspend` stops the program as Ctrl-Z does. */
export function onSignals(actions: SignalActions): {
  readonly release: () => void;
  readonly suspend: () => void;
} {
  const { process } = globalThis;
  const listeners = Object.entries(ENDING).map(([signal, code]) => ({
    signal,
    listener: () => actions.end(code),
  }));
  const suspend = () => {
    actions.stop();
    // SIGTSTP's own handling is ours by now: only SIGSTOP still stops.
    process.kill(process.pid, "SIGSTOP");
  };
  for (const { signal, listener } of listeners) process.on(signal, listener);
  process.on("SIGTSTP", suspend);
  process.on("SIGCONT", actions.goOn);
  const release = () => {
    for (const { signal, listener } of listeners) process.off(signal, listener);
    process.off("SIGTSTP", suspend);
    process.off("SIGCONT", actions.goOn);
  };
  return { release, suspend };
}
