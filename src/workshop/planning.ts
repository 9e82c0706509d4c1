import type { Seq } from "../journal/event.ts";
import type { Journal, PlanRow } from "../journal/journal.ts";
import { notFoundYet } from "../plan/cost-of-leaving.ts";
import { foundAsKept } from "../plan/found-as-kept.ts";
import { keyOfRow, type LeftWork, leftWork } from "../plan/left-work.ts";
import type { ShopProblem } from "../plan/make-problem.ts";
import type { NowAnswer } from "../plan/now-answer.ts";
import { answerByPlan, planOfRow } from "../plan/now-by-row.ts";
import { type NowRows, nowRows } from "../plan/now-rows.ts";
import { rowOf, SEED, settingsOf, warmPlan } from "../plan/plan-row.ts";
import { readShop, type ShopFacts } from "../plan/plan-shop.ts";
import type { PlanNews } from "../plan/plan-work.ts";
import { problemToPlan } from "../plan/problem-to-plan.ts";
import { answerNow, dispatchFirst, dispatchRows, nowByDispatch, type PlanContext } from "../plan/what-now.ts";
import { leftRow } from "../plan/without-by-plan.ts";
import { leavingUntil, withoutByRow } from "../plan/without-by-row.ts";
import type { Found } from "../plan/work-rows.ts";
import type { Shop } from "../shop/shop.ts";
import { type Instant, MINUTE } from "../time/instant.ts";
import type { PlannerListener, PlannerThread } from "./planner-thread.ts";

/**
 * A shop and its settings are searched for so many rounds in one bench session; then the plan rests until the next
 * act. Among the rounds of a small problem are turns of proof that grow longer and longer: about as many seconds.
 */
const ROUNDS = 4000;
const ROUNDS_WHEN_SMALL = 1200;
const SMALL = 75;

/** What leaving work costs is found again so often while nothing is done, in milliseconds. */
const STALE = 15 * MINUTE;

/** What a search is about: the same rounds need not be searched again. */
type About = Pick<PlanRow, "seq" | "settings" | "air" | "seed">;

/** What the thread was asked last, and what it has found of it. */
interface Asked {
  readonly id: number;
  readonly about: About;
  readonly at: Instant;
  readonly until: Instant;
  /** The rows whose leaving it is asked about. */
  readonly keys: readonly string[];
  /** What was put to it, made when it is put. */
  readonly put: () => { readonly made: ShopProblem; readonly leaves: readonly LeftWork[] };
  /** Rounds searched before for the same. */
  readonly before: number;
  rounds: number;
  gap: number | null;
  /** What the journal had last: another program may have kept a plan since. */
  inJournal: PlanRow | null;
  /** The plan known. */
  row: PlanRow | null;
  /** A better one, that waits for what leaving costs by it; null: none. */
  better: PlanRow | null;
}

interface Question {
  readonly about: About;
  readonly facts: ShopFacts;
  readonly inJournal: PlanRow | null;
  readonly row: PlanRow | null;
  /** What the row has become by now; null: it does not hold for this shop. */
  readonly planned: Found | null;
  readonly rows: NowRows;
}

/**
 * Keeps a plan getting better beside an open dashboard. Each answer is given at once, by the plan kept or else by
 * dispatch, and puts its question to the thread; what that finds is kept in the journal and told to whoever listens.
 */
export class Planning {
  readonly #journal: Pick<Journal, "plan" | "keepPlan" | "newestAir">;
  readonly #changed: () => void;
  readonly #thread: PlannerThread;
  #dead = false;
  #answered = false;
  #asked: Asked | null = null;
  /** A plan found that the journal could not take: a folder that may not be written. */
  #own: PlanRow | null = null;

  /** @param changed called whenever another answer would be given from now on */
  constructor(
    journal: Pick<Journal, "plan" | "keepPlan" | "newestAir">,
    changed: () => void,
    start: (listener: PlannerListener) => PlannerThread,
  ) {
    this.#journal = journal;
    this.#changed = changed;
    this.#thread = start({ onNews: (news) => this.#hear(news), onDeath: () => this.#die() });
  }

  /** What now, at once; what leaving each row costs is told once it has been found. */
  async now(shop: Shop, context: PlanContext): Promise<NowAnswer> {
    const facts = readShop(shop, context);
    const about = {
      seq: shop.newest,
      settings: settingsOf(facts),
      air: await this.#journal.newestAir(),
      seed: SEED,
    };
    const inJournal = await this.#journal.plan();
    const row = this.#own?.seq === shop.newest ? this.#own : inJournal;
    const isFirst = !this.#answered;
    this.#answered = true;
    if (isFirst && !this.#dead) return this.#atOnce(row, shop.newest, facts);
    const planned = row === null ? null : planOfRow(row, shop.newest, facts);
    if (this.#dead) {
      const answer = planned === null || row === null ? nowByDispatch(facts) : answerByPlan(planned, row);
      return { ...answer, plan: { is: "stopped", gap: null } };
    }
    const found = planned ?? dispatchRows(facts);
    const rows = nowRows(found);
    const { gap } = this.#ask({ about, facts, inJournal, row, planned, rows });
    if (planned === null || row === null) {
      const answer = answerNow(found, rows, () => notFoundYet);
      return { ...answer, plan: { is: "searching", gap: null } };
    }
    const answer = answerNow(
      planned,
      rows,
      (work) => withoutByRow(work, planned, row.leaving) ?? notFoundYet,
    );
    return { ...answer, plan: { is: "kept", gap } };
  }

  /**
   * The very first answer, by a plan as it was kept or by what dispatch begins in the first bench session: the whole answer
   * follows when that has been painted.
   */
  #atOnce(row: PlanRow | null, newest: Seq, facts: ShopFacts): NowAnswer {
    setImmediate(this.#changed);
    const kept = row === null ? null : foundAsKept(row, newest, facts);
    const found = kept ?? dispatchFirst(facts);
    const answer = answerNow(found, nowRows(found), () => notFoundYet);
    return kept === null ? { ...answer, plan: { is: "searching", gap: null } } : answer;
  }

  stop(): void {
    this.#dead = true;
    this.#thread.end();
  }

  /** Puts the question to the thread unless what it was asked last answers it. */
  #ask({ about, facts, inJournal, row, planned, rows }: Question): Asked {
    const { now } = facts.context;
    const until = leavingUntil(facts);
    const last = this.#asked;
    const same = last !== null && isAbout(last.about, about) && last.until === until;
    const keys = rows.work.map(keyOfRow);
    if (same && now < last.at + STALE && keys.every((key) => last.keys.includes(key))) return last;
    const put = once(() => {
      const made = planned?.made ?? problemToPlan(facts);
      return { made, leaves: rows.work.map((work) => leftWork(work, facts, made)) };
    });
    const spent = row !== null && isAbout(row, about) && row.leaving.until === until ? row.rounds : 0;
    const asked: Asked = {
      id: (last?.id ?? 0) + 1,
      about,
      at: now,
      until,
      keys,
      put,
      before: Math.max(same ? last.before + last.rounds : 0, spent),
      rounds: 0,
      gap: same ? last.gap : null,
      inJournal,
      row,
      better: null,
    };
    this.#asked = asked;
    this.#thread.ask(() => {
      const { made, leaves } = put();
      return {
        id: asked.id,
        seq: about.seq,
        problem: made.problem,
        warm: row === null ? null : warmPlan(row, made),
        kept: planned !== null,
        seed: SEED,
        rounds: Math.max(0, roundsFor(made) - asked.before),
        leaves,
      };
    });
    return asked;
  }

  #hear(news: PlanNews): void {
    const asked = this.#asked;
    if (asked === null || news.id !== asked.id) return;
    asked.rounds = news.rounds;
    asked.gap = news.gap;
    const { about, until, before } = asked;
    const { made, leaves } = asked.put();
    const rounds = before + news.rounds;
    if (news.plan !== null) asked.better = rowOf(news.plan, made, { ...about, rounds });
    const row = asked.better ?? asked.row;
    // What leaving costs follows a plan at once: both are kept, and shown, together.
    if (row === null || (news.without === null && leaves.length > 0)) return;
    const without = news.without ?? [];
    const work = without.map((one, index) => leftRow(made, leaves[index]?.key ?? "", one));
    void this.#keep({ ...row, rounds, leaving: { until, work } }, asked);
  }

  /** Keeps a plan, unless another program has kept one meanwhile: then that is what the next question starts from. */
  async #keep(row: PlanRow, asked: Asked): Promise<void> {
    try {
      const isOurs = isSame(await this.#journal.plan(), asked.inJournal);
      if (isOurs && (await this.#journal.keepPlan(row))) asked.inJournal = row;
      else this.#asked = null;
      this.#own = null;
    } catch {
      // A journal that cannot be written now: the plan is good all the same, only nobody else has it.
      this.#own = row;
    }
    asked.row = row;
    asked.better = null;
    this.#changed();
  }

  #die(): void {
    this.#dead = true;
    this.#changed();
  }
}

function roundsFor({ problem }: ShopProblem): number {
  return problem.tasks.length <= SMALL ? ROUNDS_WHEN_SMALL : ROUNDS;
}

/** Whether both know the same acts, settings and air: then the rounds of the one count for the other. */
function isAbout(one: About, other: About): boolean {
  return one.seq === other.seq && one.settings === other.settings && one.air === other.air;
}

/** Makes a thing when it is first asked for, and keeps it. */
function once<T>(make: () => T): () => T {
  let made: { readonly thing: T } | null = null;
  return () => {
    made ??= { thing: make() };
    return made.thing;
  };
}

function isSame(one: PlanRow | null, other: PlanRow | null): boolean {
  return one?.seq === other?.seq && one?.rounds === other?.rounds && one?.settings === other?.settings;
}
