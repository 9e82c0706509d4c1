import type { RouteChange } from "../journal/event.ts";
import type { Coat } from "../process/coat.ts";
import type { ProcessDefinition } from "../process/definition.ts";
import type { Step } from "../process/step.ts";
import type { Piece } from "./shop.ts";

/** A piece's own way through the work: its steps in working order and every coat they name. */
export type Route = Pick<Piece, "route" | "coats">;

/**
 * A route with a step put in, left out or swapped. Whatever followed the place goes on following it: a step put in
 * after another comes before all that waited for that other, and those that waited for one left out wait for what it
 * waited for.
 *
 * @returns the new route, or why the change does not fit
 */
export function changeRoute(now: Route, definition: ProcessDefinition, change: RouteChange): Route | string {
  const find = (name: string) => now.route.find((step) => step.name === name);
  const findLike = (name: string) => find(name) ?? definition.steps.find((step) => step.name === name);
  const old = find(change.do === "put" ? change.after : change.step);
  if (old === undefined) return `its route has no step "${change.do === "put" ? change.after : change.step}"`;
  if (change.do === "skip") return { ...now, route: leaveOut(now.route, old) };
  const like = findLike(change.like);
  if (like === undefined) return `there is no step "${change.like}" to work like`;
  if (change.do === "put" && find(change.name) !== undefined) return `it has a step "${change.name}" already`;
  const name = change.do === "put" ? change.name : old.name;
  const { coat, coats } = withCoat(now.coats, change.coat, name);
  const step: Step = {
    ...like,
    name,
    coat: coat ?? like.coat,
    after: change.do === "put" ? [old.name] : old.after,
  };
  if (change.do === "swap") {
    return { coats, route: now.route.map((one) => (one === old ? step : one)) };
  }
  return { coats, route: putIn(now.route, old, { ...step, handsOn: change.handsOn ?? step.handsOn }) };
}

function leaveOut(route: readonly Step[], gone: Step): readonly Step[] {
  const without = (after: readonly string[]) => [
    ...new Set(after.flatMap((name) => (name === gone.name ? gone.after : [name]))),
  ];
  return route.filter((step) => step !== gone).map((step) => ({ ...step, after: without(step.after) }));
}

function putIn(route: readonly Step[], place: Step, added: Step): readonly Step[] {
  return route.flatMap((step) => {
    const after = step.after.map((name) => (name === place.name ? added.name : name));
    return step === place ? [{ ...step, after }, added] : [{ ...step, after }];
  });
}

/**
 * The coats with one that a change brought. Where the piece's process has another coat of the same name, this one goes
 * by the step's name too: the steps that use the old one must not change.
 */
function withCoat(
  coats: Route["coats"],
  brought: Coat | null,
  step: string,
): { coat: string | null; coats: Route["coats"] } {
  if (brought === null) return { coat: null, coats };
  const known = coats[brought.name];
  const same = known === undefined || JSON.stringify(known) === JSON.stringify(brought);
  const coat = same ? brought.name : `${brought.name} (${step})`;
  return { coat, coats: { ...coats, [coat]: { ...brought, name: coat } } };
}
