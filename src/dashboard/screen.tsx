import { Text, useInput } from "ink";
import { useSyncExternalStore } from "react";
import { keysOf } from "./keys.ts";
import type { Tone } from "./line.ts";
import { pictureOf } from "./picture.ts";
import type { DashboardState, Key } from "./state.ts";

/** Where the screen reads its state and sends its keys; it keeps none itself. */
export interface Store {
  readonly state: () => DashboardState;
  readonly subscribe: (listener: () => void) => () => void;
  readonly press: (key: Key) => void;
  /** Ctrl-C and Ctrl-Z, which a raw terminal hands over as keys. */
  readonly control: (char: string) => void;
}

const LOOK: Readonly<Record<Tone, Record<string, string | boolean>>> = {
  plain: {},
  strong: { bold: true },
  dim: { dimColor: true },
  good: { color: "green" },
  soon: { color: "cyan" },
  late: { color: "yellow", bold: true },
  marked: { inverse: true },
};

/** The picture of the state, a Text a line. */
export function Screen({ store }: { readonly store: Store }) {
  const state = useSyncExternalStore(store.subscribe, store.state);
  useInput((input, flags) => {
    if (flags.ctrl && input.length === 1) store.control(input);
    for (const key of keysOf(input, flags)) store.press(key);
  });
  const lines = pictureOf(state).map((spans, row) => ({ spans, row }));
  return lines.map(({ spans, row }) => (
    <Text key={row} wrap="truncate">
      {spans.every(({ text }) => text === "")
        ? " "
        : spans
            .map(({ text, tone }, place) => ({ text, tone, place }))
            .map(({ text, tone, place }) => (
              <Text key={place} {...LOOK[tone]}>
                {text}
              </Text>
            ))}
    </Text>
  ));
}
