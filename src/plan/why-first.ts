import { after, type Instant } from "../time/instant.ts";
import { sessionNow } from "./bench-time.ts";
import type { Candidate } from "./candidates.ts";
import type { Why, WorkRow } from "./now-answer.ts";
import { type ShopFacts, wetCoat } from "./plan-shop.ts";
import type { Found } from "./work-rows.ts";

/** A due date nearer than this is a reason by itself. */
const soon = 7 * 24 * 60;

/**
 * Why a row stands where it stands: the strongest of the reasons there are.
 *
 * @param below the work that stands below it
 */
export function whyFirst(
  row: readonly Candidate[],
  setUp: WorkRow["setUp"],
  found: Found,
  below: readonly Candidate[],
): Why {
  const { facts } = found;
  const [first] = row;
  if (first === undefined) throw new Error("a row without work");
  if (first.tag === null) return { because: facts.aim === null ? "nothing else to do" : "aim" };
  if (first.state.is === "left") return { because: "left half-done" };
  return (
    shutting(row, facts) ??
    keeping(first, setUp, facts) ??
    wanted(row, facts) ??
    beforeCoat(first, below, facts) ??
    planned(row, found) ?? {
      because: first.coat === null ? "in the order of finishing" : "cure starts sooner",
    }
  );
}

function shutting(row: readonly Candidate[], facts: ShopFacts): Why | null {
  const session = sessionNow(facts);
  const shuts = row.flatMap(({ state }) =>
    state.is === "open" && state.shuts !== null ? [state.shuts] : [],
  );
  const at: Instant = Math.min(...shuts, Number.POSITIVE_INFINITY);
  if (at === Number.POSITIVE_INFINITY) return null;
  if (session !== null && at <= session.closes) return { because: "shuts tonight", at };
  const next = facts.sessions[session === null ? 0 : 1]?.opens ?? Number.POSITIVE_INFINITY;
  return at <= next ? { because: "shuts before the bench opens again", at } : null;
}

/** What stands and spoils is used while it does. */
function keeping({ step }: Candidate, setUp: WorkRow["setUp"], facts: ShopFacts): Why | null {
  if (setUp === null || !setUp.standing) return null;
  const stands = facts.standing.find(({ station }) => station === step.station);
  if (stands === undefined || stands.state.is !== "ready" || stands.state.until === null) return null;
  return { because: "set-up keeps", what: setUp.what, until: stands.state.until };
}

function wanted(row: readonly Candidate[], { context }: ShopFacts): Why | null {
  if (row.some(({ facts }) => (facts?.piece.weight ?? 1) > 1)) return { because: "this one first" };
  const near = after(context.now, soon);
  const due = row.some(
    ({ facts }) => facts !== null && facts.piece.due !== null && dueBefore(facts.piece.due, near),
  );
  return due ? { because: "due" } : null;
}

/** Sanding goes before a coat that would hold it off. */
function beforeCoat(
  { step, coat }: Candidate,
  below: readonly Candidate[],
  { context }: ShopFacts,
): Why | null {
  if (coat !== null) return null;
  for (const { these } of context.rules.keepApart) {
    const [own, other] = step.givesOff.some(({ what }) => what === these[0]) ? these : [these[1], these[0]];
    if (!step.givesOff.some(({ what }) => what === own)) continue;
    if (
      below.some(
        (row) =>
          row.coat !== null && (other === wetCoat || row.coat.givesOff.some(({ what }) => what === other)),
      )
    ) {
      return { because: "would be held after", what: other };
    }
  }
  return null;
}

/** A plan looks further than any one reason: when it begins the work is what it says. */
function planned(row: readonly Candidate[], { basis, made, plan }: Found): Why | null {
  if (basis !== "plan") return null;
  const first = plan.visits.find(({ task }) => row.some((one) => one.task === task));
  return first === undefined
    ? null
    : { because: "planned", at: after(made.problem.origin, first.start - first.setUp) };
}

/** By the date alone: near enough for a reason. */
function dueBefore(date: string, moment: Instant): boolean {
  return Date.parse(`${date}T00:00Z`) <= moment;
}
