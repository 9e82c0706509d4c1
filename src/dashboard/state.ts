import type { ActRequest } from "../acts/request.ts";
import type { ActId, Tag } from "../journal/event.ts";
import type { NowAnswer } from "../plan/now-answer.ts";
import type { Session } from "../time/bench-hours.ts";
import type { Instant } from "../time/instant.ts";
import type { Speech } from "../words/speech.ts";
import type { ScreenSize } from "./presenter.ts";
import type { TypedMend } from "./read-mend.ts";
import type { ActRow } from "./rows.ts";

/** What the dashboard shows, as read from the workshop at one moment. */
export interface Facts {
  readonly answer: NowAnswer;
  readonly speech: Speech;
  /** Bench sessions that the shared clock may show. */
  readonly sessions: readonly Session[];
  /** `since Monday 3 finished, aim 5` */
  readonly week: string;
  /** The newest act that undo would take back, in words; null: none. */
  readonly newestAct: { readonly act: ActId; readonly words: string } | null;
  readonly processes: readonly string[];
  /** Process and coat files that cannot be used, one sentence a problem. */
  readonly fileProblems: readonly string[];
  /** The one line of each caution, by its name. */
  readonly cautions: Readonly<Record<string, string>>;
}

/** Something that lies over the picture until it is answered or closed. */
export type Overlay =
  | { readonly is: "text"; readonly title: string; readonly lines: readonly string[]; readonly top: number }
  /** The plan of the coming days; made anew while it lies open, whenever `about` has changed. */
  | {
      readonly is: "days";
      readonly lines: readonly string[];
      readonly top: number;
      readonly about: string;
    }
  /** One key of `choices` answers it, or y and n. */
  | {
      readonly is: "choose";
      readonly title: string;
      readonly lines: readonly string[];
      readonly choices: readonly Choice[];
    }
  /** A caution told whole; ticking it does the act again. */
  | {
      readonly is: "caution";
      readonly cautions: readonly string[];
      readonly lines: readonly string[];
      readonly top: number;
      readonly request: ActRequest;
    }
  /** Words are typed; Enter hands them to their purpose. */
  | { readonly is: "type"; readonly title: string; readonly typed: string; readonly purpose: Typed };

export interface Choice {
  readonly key: string;
  readonly label: string;
  readonly effects: readonly Effect[];
}

/** What typed words are for. */
export type Typed =
  /** A colour is what the pass taken next is painted in. */
  | { readonly for: "note" | "mend" | "colour"; readonly tags: readonly Tag[] }
  | { readonly for: "measure"; readonly tags: readonly Tag[]; readonly what: string; readonly unit: string }
  /** Where pieces are hung from the hand, or moved to. */
  | { readonly for: "place"; readonly tags: readonly Tag[]; readonly hang: boolean }
  | { readonly for: "name"; readonly process: string }
  | { readonly for: "anyway"; readonly request: ActRequest };

interface Message {
  readonly text: string;
  readonly tone: "done" | "refused" | "told";
}

/** Everything the picture is made of; lives outside React, so that it outlives a stop with Ctrl-Z. */
export interface DashboardState {
  readonly size: ScreenSize;
  readonly now: Instant;
  readonly facts: Facts | null;
  /** Rows in the order shown, which rests while the hand is on the keys. */
  readonly rows: readonly ActRow[];
  /** Id of the marked row; null: none to mark. */
  readonly mark: string | null;
  /** A tag being typed. */
  readonly typed: string;
  readonly overlay: Overlay | null;
  readonly message: Message | null;
  readonly lastKeyAt: Instant;
  /** When Enter was last pressed for an act. */
  readonly lastEnterAt: Instant;
  /** Tags of the act asked for last: once it is done the mark goes to what is in hand of them. */
  readonly acting: readonly Tag[];
  /** The refused act that `!` does all the same, with a reason; null: none. */
  readonly refused: ActRequest | null;
  /** Forgotten steps that were asked about already: by tags and since. */
  readonly asked: readonly string[];
}

/** What must be done in the world; the loop does it and sends back what came of it. */
export type Effect =
  | { readonly do: "perform"; readonly request: ActRequest }
  | { readonly do: "read" }
  | { readonly do: "sheet"; readonly tags: readonly Tag[]; readonly step: string | null }
  | { readonly do: "week" }
  /** `again`: it lies open already, and is not opened where it was closed meanwhile. */
  | { readonly do: "days"; readonly about: string; readonly columns: number; readonly again: boolean }
  /** Asks from which step to go on after a mend. */
  | { readonly do: "mend"; readonly tags: readonly Tag[]; readonly mend: TypedMend }
  /** Asks for what is to be measured on pieces before a step; null: any. */
  | { readonly do: "measure"; readonly tags: readonly Tag[]; readonly step: string | null }
  /** Asks where to hang pieces. */
  | { readonly do: "place"; readonly tags: readonly Tag[] }
  /** Hangs or moves pieces to a place that was typed, if it is one. */
  | {
      readonly do: "place named";
      readonly tags: readonly Tag[];
      readonly said: string;
      readonly hang: boolean;
    }
  | { readonly do: "type"; readonly title: string; readonly purpose: Typed }
  | { readonly do: "tag"; readonly process: string; readonly name: string | null }
  | { readonly do: "clock is right" }
  | { readonly do: "quit" };

/** What happened. */
export type Happened =
  | { readonly is: "key"; readonly key: Key; readonly now: Instant }
  /** Keys are heard from now on; those that were waiting come next. */
  | { readonly is: "listening"; readonly now: Instant }
  | { readonly is: "tick"; readonly now: Instant }
  | { readonly is: "size"; readonly size: ScreenSize }
  | { readonly is: "facts"; readonly facts: Facts }
  | { readonly is: "told"; readonly message: Message }
  | { readonly is: "refused"; readonly text: string; readonly request: ActRequest; readonly mayGoOn: boolean }
  | {
      readonly is: "unread";
      readonly cautions: readonly string[];
      readonly lines: readonly string[];
      readonly request: ActRequest;
    }
  | {
      readonly is: "days";
      readonly lines: readonly string[];
      readonly about: string;
      readonly again: boolean;
    }
  | { readonly is: "overlay"; readonly overlay: Overlay };

/** One key, by name where it prints nothing. */
export type Key =
  | { readonly name: "up" | "down" | "pageUp" | "pageDown" | "enter" | "escape" | "backspace" }
  | { readonly name: "char"; readonly char: string };

export interface Step {
  readonly state: DashboardState;
  readonly effects: readonly Effect[];
}

export function firstState(size: ScreenSize, now: Instant): DashboardState {
  return {
    size,
    now,
    facts: null,
    rows: [],
    mark: null,
    typed: "",
    overlay: null,
    message: null,
    lastKeyAt: 0,
    lastEnterAt: 0,
    acting: [],
    refused: null,
    asked: [],
  };
}
