import type { Command, Group } from "./command.ts";

/**
 * Every command by its word: where it stands in the overview, and how it is loaded. Each is loaded only when it is
 * called, so that `now` pays for nothing but itself.
 */
export const COMMANDS: Readonly<
  Record<string, { readonly group: Group; readonly load: () => Promise<Command> }>
> = {
  now: { group: "what now", load: async () => (await import("./now.ts")).now },
  rack: { group: "what now", load: async () => (await import("./rack.ts")).rack },
  plan: { group: "what now", load: async () => (await import("./plan.ts")).plan },
  rotation: { group: "what now", load: async () => (await import("./rotation.ts")).rotation },
  tag: { group: "at the bench", load: async () => (await import("./tag.ts")).tag },
  take: { group: "at the bench", load: async () => (await import("./take.ts")).take },
  hang: { group: "at the bench", load: async () => (await import("./hang.ts")).hang },
  leave: { group: "at the bench", load: async () => (await import("./leave.ts")).leave },
  touch: { group: "at the bench", load: async () => (await import("./touch.ts")).touch },
  move: { group: "at the bench", load: async () => (await import("./move.ts")).move },
  mend: { group: "at the bench", load: async () => (await import("./mend.ts")).mend },
  ready: { group: "at the bench", load: async () => (await import("./ready.ts")).ready },
  putaway: { group: "at the bench", load: async () => (await import("./putaway.ts")).putaway },
  measure: { group: "at the bench", load: async () => (await import("./measure.ts")).measure },
  note: { group: "at the bench", load: async () => (await import("./note.ts")).note },
  first: { group: "at the bench", load: async () => (await import("./first.ts")).first },
  route: { group: "at the bench", load: async () => (await import("./route.ts")).route },
  scrap: { group: "at the bench", load: async () => (await import("./scrap.ts")).scrap },
  undo: { group: "at the bench", load: async () => (await import("./undo.ts")).undo },
  amend: { group: "at the bench", load: async () => (await import("./amend.ts")).amend },
  hours: { group: "the shop", load: async () => (await import("./hours.ts")).hours },
  air: { group: "the shop", load: async () => (await import("./air.ts")).air },
  coat: { group: "the shop", load: async () => (await import("./coat.ts")).coat },
  process: { group: "the shop", load: async () => (await import("./process.ts")).process },
  settings: { group: "the shop", load: async () => (await import("./settings.ts")).settings },
  week: { group: "the trade", load: async () => (await import("./week.ts")).week },
  demo: { group: "beside", load: async () => (await import("./demo.ts")).demo },
  completion: { group: "beside", load: async () => (await import("./completion.ts")).completion },
  help: { group: "beside", load: async () => (await import("./help.ts")).help },
};

/** The words of all commands, in the order of the overview. */
export const COMMAND_WORDS: readonly string[] = Object.keys(COMMANDS);
