import type { Override, Part } from "../journal/event.ts";
import type { FoundStep } from "./find-step.ts";
import { type Refused, refuse } from "./refuse.ts";
import type { Anyway } from "./request.ts";

/** That a step may be worked: which part of it, and what the maker chose not to heed. */
export interface Allowed {
  readonly part: Part;
  readonly overrides: readonly Override[];
}

/**
 * Judges work that is to begin (or was done without being taken) by the step's state: DESIGN, "What may happen when".
 * A reason goes over the clock only; what cannot be, stays refused.
 */
export function judgeState(found: FoundStep, anyway: Anyway | null, act: "take" | "hang"): Allowed | Refused {
  const { piece, step, state } = found;
  const named = { tag: piece.tag, step: step.name };
  switch (state.is) {
    case "blocked":
      return refuse({ code: "blocked", ...named, by: state.by });
    case "drying":
      if (anyway) return overriding("too early", anyway);
      return refuse({ code: "too early", ...named, state }, state.opens);
    case "open":
      return { part: "step", overrides: [] };
    case "shut": {
      if (anyway && !found.namedPreparation) return overriding("too late", anyway);
      // To hang it is to say that the coat was laid: then the preparation must be said, not guessed.
      if (state.preparation && (act === "take" || found.namedPreparation)) {
        return { part: "preparation", overrides: [] };
      }
      const { since, preparation, step: mendFrom } = state;
      return refuse({ code: "too late", ...named, since, preparation, mendFrom });
    }
    case "in hand":
    case "left":
      if (state.is === "in hand" && act === "take") {
        return refuse({ code: "already in hand", ...named, since: state.since });
      }
      return { part: state.part, overrides: [] };
    case "done":
      return refuse({ code: "already done", ...named, at: state.at });
    case "ended":
      return refuse({ code: "ended", tag: piece.tag, how: state.how, at: piece.end?.at ?? piece.taggedAt });
  }
}

function overriding(over: string, anyway: Anyway): Allowed {
  return { part: "step", overrides: [{ over, reason: anyway.reason }] };
}
