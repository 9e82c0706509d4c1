import type { Workshop } from "../workshop/workshop.ts";
import { DashboardLoop } from "./dashboard-loop.ts";
import { InkStdout } from "./ink-stdout.ts";
import type { ScreenSize } from "./presenter.ts";
import { Presenter } from "./presenter.ts";
import { onSignals } from "./signals.ts";

export interface DashboardOptions {
  readonly workshop: Workshop;
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** Shows the dashboard until the maker quits or a signal ends it; the terminal is left as it was. Gives the exit code. */
export async function runDashboard({ workshop, stdin, stdout, env }: DashboardOptions): Promise<number> {
  // The colour library under Ink does not honour NO_COLOR, and looks once, when it is loaded: only then load Ink.
  if ((env.NO_COLOR ?? "") !== "" || !workshop.taste.colour) globalThis.process.env.FORCE_COLOR = "0";
  const [{ render }, { Screen }] = await Promise.all([import("ink"), import("./screen.tsx")]);
  const size = (): ScreenSize => ({ columns: stdout.columns || 80, rows: stdout.rows || 24 });
  const presenter = new Presenter((text) => stdout.write(text), size());
  const inkStdout = new InkStdout(size(), (frame) => presenter.show(frame));
  const loop = new DashboardLoop(workshop, size());
  let ink: ReturnType<typeof render> | null = null;

  const mount = () => {
    if (ink !== null) return;
    presenter.enter();
    ink = render(<Screen store={loop} />, {
      stdout: inkStdout as unknown as NodeJS.WriteStream,
      stdin,
      debug: true,
      exitOnCtrlC: false,
      patchConsole: false,
    });
    // A component that throws ends Ink alone; the program must end with it.
    ink.waitUntilExit().catch((trouble: unknown) => loop.fail(trouble));
  };
  const unmount = () => {
    ink?.unmount();
    ink = null;
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
      mount();
      loop.read();
    },
  });
  loop.onSuspend = suspend;
  stdout.on("resize", resize);
  // A terminal that was closed takes nothing any more. The listener stays: what is written last may fail late.
  stdout.on("error", () => loop.end(129));
  try {
    mount();
    return await loop.run();
  } finally {
    stdout.off("resize", resize);
    release();
    unmount();
    workshop.markSeen();
  }
}
