/** What the dashboard does when the world ends, stops or wakes it. */
export interface SignalActions {
  /** Ends with this exit code: 128 and the signal's number, as shells count. */
  readonly end: (code: number) => void;
  /** Something threw where nobody caught it. */
  readonly fail: (trouble: unknown) => void;
  /** Gives the terminal back before the program is stopped. */
  readonly stop: () => void;
  readonly goOn: () => void;
}

const ENDING = { SIGTERM: 143, SIGHUP: 129, SIGINT: 130 } as const;

/** Listens for signals and stray throws until `release`; `suspend` stops the program as Ctrl-Z does. */
export function onSignals(actions: SignalActions): {
  readonly release: () => void;
  readonly suspend: () => void;
} {
  const { process } = globalThis;
  const listeners: readonly (readonly [string, (trouble: unknown) => void])[] = [
    ...Object.entries(ENDING).map(([signal, code]) => [signal, () => actions.end(code)] as const),
    ["uncaughtException", actions.fail],
    ["unhandledRejection", actions.fail],
    // SIGTSTP's own handling is ours by now: only SIGSTOP still stops.
    ["SIGTSTP", () => stop(process.pid)],
    ["SIGCONT", actions.goOn],
  ];
  const stop = (target: number) => {
    actions.stop();
    process.kill(target, "SIGSTOP");
  };
  for (const [name, listener] of listeners) process.on(name, listener);
  return {
    release: () => {
      for (const [name, listener] of listeners) process.off(name, listener);
    },
    // 0 is the whole group, as a terminal would stop it: with `npm start` the shell waits for npm, not for us.
    suspend: () => stop(0),
  };
}
