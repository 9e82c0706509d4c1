import { join } from "node:path";
import type { DecideContext } from "../acts/context.ts";
import type { ActRequest } from "../acts/request.ts";
import type { NewAir } from "../journal/air.ts";
import type { By, NewEvent } from "../journal/event.ts";
import type { Journal, PlanRow, Wanted } from "../journal/journal.ts";
import type { Finishes } from "../plan/compare-finishes.ts";
import type { NowAnswer } from "../plan/now-answer.ts";
import type { PlanContext } from "../plan/what-now.ts";
import { whatNow } from "../plan/what-now.ts";
import type { SafetyRules } from "../safety/rules.ts";
import { foldShop } from "../shop/fold.ts";
import { hoursOf } from "../shop/settings-at.ts";
import type { Shop } from "../shop/shop.ts";
import type { BenchHours } from "../time/bench-hours.ts";
import type { Instant } from "../time/instant.ts";
import type { Zone } from "../time/zone.ts";
import { AirOfShop } from "./air-of-shop.ts";
import type { Clock } from "./clock.ts";
import type { ClockDoubt } from "./clock-watch.ts";
import { ClockWatch } from "./clock-watch.ts";
import { keepTouches } from "./keep-touches.ts";
import type { Library } from "./library.ts";
import { LibraryOnDisk, ownProcesses } from "./library.ts";
import { findPackageRoot } from "./package-root.ts";
import type { PlacesOnDisk } from "./places-on-disk.ts";
import { newPieceOf, readUsual } from "./plan-context.ts";
import type { Planning } from "./planning.ts";
import { isNewsOfClock, markSeen, readSeen } from "./seen.ts";
import type { Taste } from "./taste.ts";
import type { Outcome, Workshop } from "./workshop.ts";
import { machineZone, zoneNamed } from "./zones.ts";

/** How often news from other terminals is looked for, in milliseconds (microseconds of work each). */
const NEWS_EVERY = 400;
/** Another terminal may be first this often before something must be wrong. */
const TRIES = 20;

/** Acts after which what touch tests say of coats may be otherwise. */
const MAY_MOVE_TOUCHES: readonly ActRequest["act"][] = ["touch", "undo", "amend", "mend"];

/** The workshop over a real journal, clock and disk. */
export class LiveWorkshop implements Workshop {
  readonly journal: Journal;
  readonly places: PlacesOnDisk;
  readonly taste: Taste;
  readonly tasteTrouble: string | null;
  readonly by: By;
  readonly #clock: Clock;
  readonly #watch: ClockWatch;
  readonly #air: AirOfShop;
  readonly #library: LibraryOnDisk;
  readonly #zones = new Map<string, Promise<Zone>>();
  /** Null unless a plan is being searched for. */
  #planning: Promise<Planning> | null = null;
  #present: { readonly version: number; readonly shop: Promise<Shop> } | null = null;

  constructor(parts: {
    readonly journal: Journal;
    readonly places: PlacesOnDisk;
    readonly taste: Taste;
    readonly tasteTrouble: string | null;
    readonly by: By;
    readonly clock: Clock;
    readonly shippedProcesses: string;
  }) {
    this.journal = parts.journal;
    this.places = parts.places;
    this.taste = parts.taste;
    this.tasteTrouble = parts.tasteTrouble;
    this.by = parts.by;
    this.#clock = parts.clock;
    this.#air = new AirOfShop(parts.journal);
    this.#watch = new ClockWatch(parts.clock);
    this.#library = new LibraryOnDisk({
      shipped: parts.shippedProcesses,
      own: ownProcesses(parts.places.data),
      cache: parts.places.cache,
    });
  }

  now(): Instant {
    return this.#clock.now();
  }

  async zone(): Promise<Zone> {
    return this.#zoneOf(await this.shop());
  }

  async hours(): Promise<BenchHours> {
    return hoursOf((await this.shop()).settings);
  }

  readLibrary(): Promise<Library> {
    return this.#library.read();
  }

  async rules(): Promise<SafetyRules> {
    return (await this.readLibrary()).rules;
  }

  async shop(wanted: Wanted = { of: "out" }, until?: Instant): Promise<Shop> {
    if (until !== undefined)
      return this.#inAir(foldShop(await this.journal.read({ of: "all" }), until), until);
    if (wanted.of !== "out") return this.#readShop(wanted);
    const version = this.journal.version();
    if (this.#present?.version !== version) this.#present = { version, shop: this.#readShop(wanted) };
    return this.#present.shop;
  }

  async whatNow(at?: Instant): Promise<NowAnswer> {
    const shop = await this.shop(undefined, at);
    const context = await this.planContext(shop, at);
    if (at === undefined && this.#planning !== null) return (await this.#planning).now(shop, context);
    const row = await this.readPlan();
    if (row === null) return whatNow(shop, context);
    if (row.seq !== shop.newest) return { ...whatNow(shop, context), plan: { is: "older", gap: null } };
    const { nowByRow } = await import("../plan/now-by-row.ts");
    return nowByRow(shop, context, row);
  }

  async compareFinishes(shop: Shop, changed: Shop): Promise<Finishes> {
    const { compareFinishes } = await import("../plan/compare-finishes.ts");
    return compareFinishes(shop, changed, await this.planContext(shop), await this.readPlan());
  }

  async planContext(shop: Shop, at?: Instant): Promise<PlanContext> {
    const [zone, library, usual] = await Promise.all([
      this.#zoneOf(shop),
      this.readLibrary(),
      readUsual(this.journal, shop),
    ]);
    return {
      now: at ?? this.now(),
      zone,
      hours: hoursOf(shop.settings),
      rules: library.rules,
      usualMinutes: usual,
      newPiece: newPieceOf(shop, library),
    };
  }

  readPlan(): Promise<PlanRow | null> {
    return this.journal.plan();
  }

  startPlanning(listener: () => void): () => void {
    const planning = this.#startPlanning(listener);
    this.#planning = planning;
    return () => {
      this.#planning = null;
      void planning.then((started) => started.stop());
    };
  }

  async recordAir(readings: readonly NewAir[], sensor: string | null): Promise<number> {
    const by: By = sensor === null ? this.by : `sensor:${sensor}`;
    const kept = await this.journal.appendAir(readings, by, this.now());
    // What was felt yesterday is judged by the air of yesterday, which a logger may tell today.
    if (kept > 0) {
      const shop = await this.shop();
      await keepTouches(this.journal, shop, [...shop.pieces.keys()]);
    }
    return kept;
  }

  async perform(request: ActRequest): Promise<Outcome> {
    // Telling what to work now, the everyday start, needs no acts.
    const { decide } = await import("../acts/decide.ts");
    for (let attempt = 0; attempt < TRIES; attempt++) {
      const shop = await this.shop(wantedFor(request));
      const decision = decide(request, shop, await this.#context(shop));
      if ("refusal" in decision) return decision;
      await this.#settleZone(shop);
      const appended = await this.journal.append({ ...decision, by: this.by, recorded: this.now() });
      if (!appended.kept) continue;
      const tags = decision.events.flatMap(({ tag }: NewEvent) => (tag === null ? [] : [tag]));
      const reading = await this.journal.read({ of: "tags", tags });
      const after = await this.#inAir(foldShop(reading));
      const learned =
        MAY_MOVE_TOUCHES.includes(request.act) && (await keepTouches(this.journal, after, tags));
      return {
        done: appended.act,
        events: reading.events.filter(({ act }) => act === appended.act),
        // Its coats go by what has just been learned of them, as whatever asks next will find.
        shop: learned ? await this.#inAir(foldShop(reading)) : after,
      };
    }
    throw new Error(
      `another program wrote before this one ${TRIES} times in a row: nothing was recorded, try again`,
    );
  }

  async clockDoubt(): Promise<ClockDoubt | null> {
    return this.#watch.doubt(await this.shop());
  }

  async newClockDoubt(): Promise<ClockDoubt | null> {
    const doubt = await this.clockDoubt();
    if (doubt === null) return null;
    const { newestRecorded } = await this.shop();
    return isNewsOfClock(this.places.state, `${doubt.kind} ${newestRecorded}`) ? doubt : null;
  }

  clockIsRight(): void {
    this.#watch.settle();
  }

  onNews(listener: () => void): () => void {
    let known = this.journal.version();
    const timer = setInterval(() => {
      const version = this.journal.version();
      if (version === known) return;
      known = version;
      listener();
    }, NEWS_EVERY);
    return () => clearInterval(timer);
  }

  lastSeen(): Instant | null {
    return readSeen(this.places.state);
  }

  markSeen(): void {
    markSeen(this.places.state, this.now());
  }

  close(): void {
    this.journal.close();
  }

  async #readShop(wanted: Wanted): Promise<Shop> {
    return this.#inAir(foldShop(await this.journal.read(wanted)));
  }

  /** @param at an earlier moment, by what is known of it; left out: the present */
  async #inAir(shop: Shop, at?: Instant): Promise<Shop> {
    const zone = await this.#zoneOf(shop);
    const air = at === undefined ? this.#air : new AirOfShop(this.journal);
    return air.hang(shop, zone, at ?? this.now());
  }

  /** Only an open dashboard plans ahead: no other start pays for what that takes. */
  async #startPlanning(listener: () => void): Promise<Planning> {
    const [{ Planning }, { startPlannerThread }] = await Promise.all([
      import("./planning.ts"),
      import("./planner-thread.ts"),
    ]);
    const file = join(findPackageRoot(), "dist", "plan-worker.cjs");
    return new Planning(this.journal, listener, (told) => startPlannerThread(file, told));
  }

  #zoneOf(shop: Shop): Promise<Zone> {
    const name = shop.settings.zone ?? machineZone();
    let zone = this.#zones.get(name);
    if (zone === undefined) {
      zone = zoneNamed(this.places.cache, name).then(
        (found) => found ?? { name: "UTC", offsetMinutes: 0, changes: [] },
      );
      this.#zones.set(name, zone);
    }
    return zone;
  }

  async #context(shop: Shop): Promise<DecideContext> {
    const [zone, rules, usual] = await Promise.all([
      this.#zoneOf(shop),
      this.rules(),
      readUsual(this.journal, shop),
    ]);
    return { now: this.now(), zone, hours: hoursOf(shop.settings), rules, by: this.by, usualMinutes: usual };
  }

  /** Before the first act, the zone this machine is in becomes a fact of the journal. */
  async #settleZone(shop: Shop): Promise<void> {
    if (shop.settings.zone !== null) return;
    const now = this.now();
    await this.journal.append({
      events: [
        { kind: "settled", setting: { of: "zone", name: machineZone() }, at: now, tag: null, station: null },
      ],
      by: "sensor:machine",
      recorded: now,
      expects: { tags: {}, stations: {} },
      processes: [],
    });
  }
}

/** Pieces the act is about are read whatever their state; undo and amend of an older act read what it touched. */
function wantedFor(request: ActRequest): Wanted {
  if ("tags" in request) return { of: "tags", tags: request.tags };
  if (request.act === "undo" && request.target !== null) return { of: "acts", acts: [request.target] };
  if (request.act === "amend") {
    return "tag" in request.target
      ? { of: "tags", tags: [request.target.tag] }
      : { of: "acts", acts: [request.target.act] };
  }
  return { of: "out" };
}
