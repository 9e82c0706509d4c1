import type { ActRequest } from "../acts/request.ts";
import type { DashboardState, Effect, Overlay, Step } from "./state.ts";

/** Asks for words, whatever they are for. */
export function typing(title: string, purpose: Extract<Overlay, { is: "type" }>["purpose"]): Overlay {
  return { is: "type", title, typed: "", purpose };
}

/** The effect that does an act. */
export function perform(request: ActRequest): Effect {
  return { do: "perform", request };
}

/** The state with what was typed, told and refused forgotten. */
export function cleared(state: DashboardState): DashboardState {
  return { ...state, typed: "", message: null, refused: null };
}

/** A step that changes the state and does nothing in the world. */
export function still(state: DashboardState): Step {
  return { state, effects: [] };
}
