import type { Work } from "./choose-work.ts";
import { matchName } from "./match-name.ts";
import { type Refused, refuse } from "./refuse.ts";

/**
 * The answer of a step with a result that a word said in a hurry means. Such a step is not done without one; other
 * work, and a preparation, takes none.
 */
export function matchAnswer(
  said: string | null,
  { piece, step, part }: Pick<Work, "piece" | "step" | "part">,
): { readonly answer: string | null } | Refused {
  const result = part === "step" ? step.result : null;
  if (!result && said === null) return { answer: null };
  const answers = Object.keys(result ?? {});
  const match = matchName(said ?? "", answers);
  if (!result || !("found" in match)) return refuse({ code: "no such answer", step: step.name, answers });
  const leads = result[match.found];
  const steps = piece.route.map(({ name }) => name);
  if (leads && "backTo" in leads && !steps.includes(leads.backTo)) {
    return refuse({ code: "no such step", tag: piece.tag, step: leads.backTo, nearest: null, steps });
  }
  return { answer: match.found };
}
