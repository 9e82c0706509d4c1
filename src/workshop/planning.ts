import type { Seq } from "../journal/event.ts";
import type { Journal, PlanRow } from "../journal/journal.ts";
import { notFoundYet, type WithoutIt } from "../plan/cost-of-leaving.ts";
import { keyOfRow, type LeftWork, leftWork } from "../plan/left-work.ts";
import type { ShopProblem } from "../plan/make-problem.ts";
import type { NowAnswer } from "../plan/now-answer.ts";
import { answerByPlan, planOfRow } from "../plan/now-by-row.ts";
import { type NowRows, nowRows } from "../plan/now-rows.ts";
import { rowOf, settingsOf, warmPlan } from "../plan/plan-row.ts";
import { readShop, type ShopFacts } from "../plan/plan-shop.ts";
import type { PlanNews } from "../plan/plan-work.ts";
import { problemToPlan } from "../plan/problem-to-plan.ts";
import { answerNow, dispatchNow, nowByDispatch, type PlanContext } from "../plan/what-now.ts";
import { compareWithout } from "../plan/without-by-plan.ts";
import type { Shop } from "../shop/shop.ts";
import { MINUTE } from "../time/instant.ts";
import type { PlannerListener, PlannerThread } from "./planner-thread.ts";

/** A shop and its settings are searched for so many rounds in all; then the plan rests until the next act. */
const ROUNDS = 4000;

/** The same search in every program. */
const SEED = 1;

/** What the thread was asked last, and what it has found of it. */
interface Asked {
  readonly id: number;
  /** The same question is not asked again. */
  readonly key: string;
  readonly about: Pick<PlanRow, "seq" | "settings" | "air" | "seed">;
  readonly made: ShopProblem;
  readonly leaves: readonly LeftWork[];
  /** The plan kept when it was asked. */
  readonly row: PlanRow | null;
  /** Rounds searched before for this shop and these settings. */
  readonly before: number;
  rounds: number;
  gap: number | null;
  /** What leaving costs, by row; of the question before until its own is found. */
  costs: ReadonlyMap<string, WithoutIt>;
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
  #asked: Asked | null = null;
  /** A plan that the journal could not take: a folder that may not be written. */
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
    const air = await this.#journal.newestAir();
    const row = this.#own?.seq === shop.newest ? this.#own : await this.#journal.plan();
    const planned = row === null ? null : planOfRow(row, shop.newest, facts);
    if (this.#dead) {
      const answer =
        planned === null || row === null ? nowByDispatch(facts) : answerByPlan(planned, row.seed);
      return { ...answer, plan: { is: "stopped", gap: null } };
    }
    const found = planned ?? dispatchNow(facts);
    const rows = nowRows(found);
    const asked = this.#ask({ shop, air, facts, row, isKept: planned !== null, rows });
    const answer = answerNow(found, rows, (work) => asked.costs.get(keyOfRow(work)) ?? notFoundYet);
    return {
      ...answer,
      plan: planned === null ? { is: "searching", gap: null } : { is: "kept", gap: asked.gap },
    };
  }

  stop(): void {
    this.#dead = true;
    this.#thread.end();
  }

  /** Puts the question to the thread unless it is the one it has. */
  #ask({ shop, air, facts, row, isKept, rows }: Question): Asked {
    const about = { seq: shop.newest, settings: settingsOf(facts), air, seed: SEED };
    const minute = Math.floor(facts.context.now / MINUTE);
    const key = JSON.stringify([about, minute, isKept, rows.work.map(keyOfRow)]);
    const last = this.#asked;
    if (last?.key === key) return last;
    const made = problemToPlan(facts);
    const same = last !== null && isAbout(last.about, about);
    const asked: Asked = {
      id: (last?.id ?? 0) + 1,
      key,
      about,
      made,
      leaves: rows.work.map((work) => leftWork(work, facts, made)),
      row,
      before: Math.max(
        same ? last.before + last.rounds : 0,
        row !== null && isAbout(row, about) ? row.rounds : 0,
      ),
      rounds: 0,
      gap: same ? last.gap : null,
      costs: same ? last.costs : new Map(),
    };
    this.#asked = asked;
    this.#thread.ask({
      id: asked.id,
      seq: about.seq,
      problem: made.problem,
      warm: row === null ? null : warmPlan(row, made),
      kept: isKept,
      seed: SEED,
      rounds: Math.max(0, ROUNDS - asked.before),
      leaves: asked.leaves,
    });
    return asked;
  }

  #hear(news: PlanNews): void {
    const asked = this.#asked;
    if (asked === null || news.id !== asked.id) return;
    asked.rounds = news.rounds;
    asked.gap = news.gap;
    const { made, leaves } = asked;
    if (news.without !== null) {
      asked.costs = new Map(
        news.without.flatMap((without, index) => {
          const work = leaves[index];
          return work === undefined ? [] : [[work.key, compareWithout(made, news, without, work)]];
        }),
      );
    }
    if (news.plan === null) this.#changed();
    else
      void this.#keep(
        rowOf(news.plan, made, { ...asked.about, rounds: asked.before + news.rounds }),
        asked.row,
      );
  }

  /** Keeps a plan, unless another program has kept one meanwhile: then that is what the next question starts from. */
  async #keep(row: PlanRow, before: PlanRow | null): Promise<void> {
    try {
      const there = await this.#journal.plan();
      if (isSame(there, before)) await this.#journal.keepPlan(row);
    } catch {
      // A journal that cannot be written now: the plan is good all the same, only nobody else has it.
      this.#own = row;
    }
    this.#changed();
  }

  #die(): void {
    this.#dead = true;
    this.#changed();
  }
}

interface Question {
  readonly shop: Shop;
  /** The newest reading of the air. */
  readonly air: Seq;
  readonly facts: ShopFacts;
  readonly row: PlanRow | null;
  /** The row holds for this shop. */
  readonly isKept: boolean;
  readonly rows: NowRows;
}

/** Whether both know the same acts, settings and air: then the rounds of the one count for the other. */
function isAbout(one: Asked["about"], other: Asked["about"]): boolean {
  return one.seq === other.seq && one.settings === other.settings && one.air === other.air;
}

function isSame(one: PlanRow | null, other: PlanRow | null): boolean {
  return one?.seq === other?.seq && one?.rounds === other?.rounds && one?.settings === other?.settings;
}
