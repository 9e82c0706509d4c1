import { isClosing, sayClosing } from "../words/say-closing.ts";
import type { Workshop } from "../workshop/workshop.ts";
import { DashboardLoop } from "./dashboard-loop.ts";
import { InkStdout } from "./ink-stdout.ts";
import { paintLines } from "./paint-lines.ts";
import { pictureOf } from "./picture.ts";
import type { ScreenSize } from "./presenter.ts";
import { Presenter } from "./presenter.ts";
import { onSignals } from "./signals.ts";
import type { DashboardState } from "./state.ts";

export interface DashboardOptions {
  readonly workshop: Workshop;
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** What a maker who goes home should know; nothing while the evening goes on. */
function lastWords({ facts }: DashboardState): readonly string[] {
  if (facts === null || !isClosing(facts.answer)) return [];
  const { waiting, prepared } = facts.answer;
  return waiting.length + prepared.length > 0 ? sayClosing(facts.answer, facts.speech) : [];
}

/** Shows the dashboard until the maker quits or a signal ends it; the terminal is left as it was. Gives the exit code. */
export async function runDashboard({ workshop, stdin, stdout, env }: DashboardOptions): Promise<number> {
  const colour = (env.NO_COLOR ?? "") === "" && workshop.taste.colour;
  // The colour library under Ink does not honour NO_COLOR, and looks once, when it is loaded.
  if (!colour) globalThis.process.env.FORCE_COLOR = "0";
  const size = (): ScreenSize => ({ columns: stdout.columns || 80, rows: stdout.rows || 24 });
  const presenter = new Presenter((text) => stdout.write(text), size());
  const inkStdout = new InkStdout(size(), (frame) => presenter.show(frame));
  const loop = new DashboardLoop(workshop, size());
  let unmountInk: (() => void) | null = null;

  const mount = async () => {
    presenter.enter();
    const { mountInk } = await import("./mount-ink.tsx");
    loop.happen({ is: "listening", now: workshop.now() });
    unmountInk ??= mountInk({ store: loop, stdin, stdout: inkStdout, fail: (trouble) => loop.fail(trouble) });
  };
  const unmount = () => {
    unmountInk?.();
    unmountInk = null;
    presenter.leave();
  };
  const resize = () => {
    presenter.resize(size());
    inkStdout.resize(size());
    loop.happen({ is: "size", size: size() });
  };

  const { release, suspend } = onSignals({
    end: (code) => loop.end(code),
    fail: (trouble) => loop.fail(trouble),
    stop: unmount,
    goOn: () => {
      resize();
      mount().catch((trouble: unknown) => loop.fail(trouble));
      loop.read();
    },
  });
  loop.onSuspend = suspend;
  stdout.on("resize", resize);
  // A terminal that was closed takes nothing any more. The listener stays: what is written last may fail late.
  stdout.on("error", () => loop.end(129));
  try {
    presenter.enter();
    // Keys typed before Ink is loaded wait for it, and are not shown by the terminal meanwhile.
    stdin.setRawMode(true);
    const ended = loop.run();
    await Promise.race([loop.firstFacts(), ended]);
    // Ink takes longer to load than all the rest: the first frame does not wait for it.
    presenter.show(paintLines(pictureOf(loop.state()), colour));
    await mount();
    const code = await ended;
    unmount();
    if (code === 0) for (const text of lastWords(loop.state())) stdout.write(`${text}\n`);
    return code;
  } finally {
    stdout.off("resize", resize);
    release();
    unmount();
    stdin.setRawMode(false);
    workshop.markSeen();
  }
}
