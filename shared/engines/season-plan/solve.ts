/**
 * The seven levels one after another, each held at its value (and its allowance) for the next. What is reported is what the referee
 * measures, and never worse than the simple rule. README, "Levels".
 */
import { checkSeasonPlan, type SeasonVerdict } from "./check.ts";
import { CLOCK_FOR_LEVELS, ROADS, ROLL_STEPS, SHARE, STEPS_A_SECOND, type SolveOptions } from "./effort.ts";
import { grainOf } from "./grain.ts";
import { KG } from "./model-columns.ts";
import { buildModel, costsOf, planOf, wholesOf, type SeasonModel } from "./model.ts";
import type { Solver } from "./programme.ts";
import { planByRule } from "./rule.ts";
import { SeasonSearch } from "./search.ts";
import { LEVELS, type Level, type Score, type Season, type SeasonPlan } from "./types.ts";

export interface Found {
  readonly plan: SeasonPlan;
  readonly verdict: SeasonVerdict;
}

export interface LevelResult {
  readonly level: Level;
  /** In the unit of the level, from the referee. */
  readonly value: number;
  /** None can be better while the levels before it are held; null: not known. */
  readonly bound: number | null;
  readonly proven: boolean;
}

export interface Solved {
  readonly status: "optimal" | "feasible" | "infeasible";
  readonly best: Found;
  readonly rule: Found;
  readonly levels: readonly LevelResult[];
  /** The clock or a cancel ended it: the same season may be planned better on a machine with more time. */
  readonly stoppedEarly: boolean;
  readonly steps: number;
  readonly seconds: number;
}

/** From this many whole numbers on a season is improved piece by piece, and only its first level is proved as a whole. */
const LARGE = 300;
/** kg, %, kg, batches, points, minutes, batch-weeks: a search device for large seasons, not the definition of better (common practice, no source). */
const BLEND = [1, 0.05, 0.005, 0.01, 1e-4, 1e-5, 1e-6];
/** Nothing asked for is given up for what a plan in hand could still save. */
const FIRM_BLEND = [1, 0.3, 0.005, 0.01, 1e-4, 1e-5, 1e-6];
/** With strict levels what comes later only decides between plans that lose the same. */
const STRICT_BLEND = [1, 1e-4, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8];
/** Levels below what was asked for may raise the loss by no more than this share, whatever the allowance. */
const TASTE_SHARE = 0.005;

export function solveSeason(season: Season, solver: Solver, options: SolveOptions): Solved {
  const rulePlan = planByRule(season);
  const rule: Found = { plan: rulePlan, verdict: checkSeasonPlan(season, rulePlan) };
  const model = buildModel(season);
  const search = new SeasonSearch(model, solver, { seconds: options.secondsInAll ?? CLOCK_FOR_LEVELS * options.secondsPerLevel, stop: options.stop ?? (() => false) });
  try {
    return new LevelRun(model, search, rule, options).run();
  } finally {
    search.close();
  }
}

class LevelRun {
  private readonly levels: LevelResult[] = [];
  private readonly costs: readonly Float64Array[];
  private readonly blend: Float64Array;
  private readonly firm: Float64Array;
  private readonly picked: number;
  private readonly steps: number;
  /** Locks as they stand, by level. */
  private readonly caps: number[] = [];
  /** Of the loss, in grams. */
  private lossBound: number | null = null;
  private best: Found;
  private readonly model: SeasonModel;
  private readonly search: SeasonSearch;
  private readonly rule: Found;
  private readonly options: SolveOptions;

  constructor(model: SeasonModel, search: SeasonSearch, rule: Found, options: SolveOptions) {
    this.model = model;
    this.search = search;
    this.rule = rule;
    this.options = options;
    this.best = rule;
    this.steps = options.stepsPerLevel ?? options.secondsPerLevel * (search.size > LARGE ? STEPS_A_SECOND.large : STEPS_A_SECOND.small);
    this.costs = LEVELS.map((_, i) => costsOf(model, LEVELS.map((_, k) => (k === i ? 1 : 0))));
    this.blend = costsOf(model, options.allowance > 0 ? BLEND : STRICT_BLEND);
    this.firm = costsOf(model, options.allowance > 0 ? FIRM_BLEND : STRICT_BLEND);
    this.picked = model.season.crops.reduce((sum, { harvestGrams }) => sum + harvestGrams.reduce((all, weeks, s) => all + (model.season.scenarios[s]?.chance ?? 0) * weeks.reduce((a, b) => a + b, 0), 0), 0) / KG;
  }

  run(): Solved {
    const { search, rule, options } = this;
    const wholes = rule.verdict.faults.length === 0 ? wholesOf(this.model, rule.plan) : null;
    search.best = wholes ? search.settle(this.blend, wholes) : null;
    this.tell();
    if (this.large && !search.over) {
      search.rollForward(this.blend, ROLL_STEPS);
      this.tell();
    }
    for (let i = 0; i < (options.levels ?? LEVELS.length); i++) {
      this.progress(i);
      if (!(this.large ? this.largeLevel(i) : this.smallLevel(i))) return this.answer("infeasible");
      if (i === 1 && options.allowance > 0) this.lossDownAgain();
    }
    if (options.allowance > 0) this.closingPass();
    this.tell();
    return this.answer(this.levels.every(({ proven }) => proven) ? "optimal" : "feasible");
  }

  private get large(): boolean {
    return this.search.size > LARGE;
  }

  /** As a whole, to its proof. False when there is no plan at all. */
  private smallLevel(i: number): boolean {
    const { search } = this;
    const costs = this.costs[i] as Float64Array;
    let proven = search.best !== null && this.isSettled(costs, search.best);
    let bound: number | null = null;
    if (!proven && !search.over) {
      if (i > 0 && this.model.season.scenarios.length > 1) this.improve(costs, SHARE.later);
      const solved = search.whole(costs, this.steps, 0.99 * grainOf(this.model.season, LEVELS[i] as Level));
      if (solved.status === "none") return false;
      proven = solved.status === "optimal" && search.best !== null;
      bound = solved.bound;
    }
    return this.close(i, bound, proven);
  }

  /** Of the loss the bound is asked of the whole programme; then all levels are improved piece by piece, and the fractions tell their bounds. */
  private largeLevel(i: number): boolean {
    const { search } = this;
    const costs = this.costs[i] as Float64Array;
    let proven = search.best !== null && this.isSettled(costs, search.best);
    let bound: number | null = null;
    if (!proven && !search.over) {
      if (i === 0) return this.lossOfLarge(costs);
      this.improve(costs, i === 1 ? SHARE.asked : SHARE.later);
      bound = search.fractions(costs);
    }
    return this.close(i, bound, proven);
  }

  private lossOfLarge(costs: Float64Array): boolean {
    const { search, options } = this;
    const start = search.best;
    const { status, bound } = search.whole(costs, SHARE.bound * this.steps, 0.99 * grainOf(this.model.season, "wasteGrams"));
    if (status === "none") return false;
    this.lossBound = bound * KG;
    let least = search.best ? search.valueOf(costs, search.best) : Infinity;
    search.remember(search.best);
    // with an allowance the way through the weeks is the better start, as long as it loses no more than that
    const within = start !== null && options.allowance > 0;
    for (let road = 0; road < (within ? ROADS : 1) && !search.over; road++) {
      const before = search.best;
      if (within) search.best = start;
      search.whole(this.blend, SHARE.blend * this.steps, 0.01, road);
      search.remember(search.best);
      if (before && road > 0 && search.best && search.valueOf(this.firm, before) < search.valueOf(this.firm, search.best)) search.best = before;
      search.cross(this.firm, SHARE.crossing * this.steps, () => this.tell());
      if (search.best) least = Math.min(least, search.valueOf(costs, search.best));
    }
    this.improve(this.firm, SHARE.pieces);
    if (!search.best) return false;
    least = Math.min(least, search.valueOf(costs, search.best));
    return this.close(0, bound, status === "optimal", least);
  }

  /** Holds the level for those that come. */
  private close(i: number, bound: number | null, proven: boolean, least = this.search.best ? this.search.valueOf(this.costs[i] as Float64Array, this.search.best) : Infinity): boolean {
    if (!this.search.best) return false;
    this.levels.push({ level: LEVELS[i] as Level, value: least, bound: proven ? least : bound === null ? null : Math.min(bound, least), proven });
    if (i === 0) this.lossBound = (this.levels[0]?.bound ?? 0) * KG;
    this.caps[i] = this.capOf(i, least);
    this.search.lock(this.costs[i] as Float64Array, this.caps[i] as number);
    this.tell();
    return true;
  }

  private capOf(i: number, least: number): number {
    const room = this.model.levels[i]?.room ?? 0;
    if ((i !== 0 && i !== 2) || this.options.allowance === 0) return least + room;
    const cap = least + this.options.allowance * this.picked;
    if (i === 2 || this.rule.verdict.faults.length > 0) return cap + room;
    // never more lost than by the rule
    return Math.min(cap, Math.max(least, this.rule.verdict.score.wasteGrams / KG)) + room;
  }

  /** With what was asked for held, the loss comes down as far as it will; taste and work may then raise it by a little only. */
  private lossDownAgain(): void {
    const { search } = this;
    const loss = this.costs[0] as Float64Array;
    if (!search.best || search.over) return;
    if (!this.large) return void search.whole(loss, this.steps, 0.99 * grainOf(this.model.season, "wasteGrams"));
    search.cross(loss, SHARE.crossing * this.steps, () => this.tell());
    this.improve(loss, SHARE.down);
    const least = search.valueOf(loss, search.best);
    this.caps[0] = Math.min(this.caps[0] ?? Infinity, least * (1 + TASTE_SHARE) + 0.5 / KG);
    this.relock();
  }

  /** What is left of the allowance is not spent for nothing: loss down once more, everything later held. */
  private closingPass(): void {
    const { search } = this;
    const loss = this.costs[0] as Float64Array;
    if (!search.best || search.over) return;
    if (this.large) this.improve(loss, SHARE.close);
    else search.whole(loss, this.steps, 0.99 * grainOf(this.model.season, "wasteGrams"));
  }

  private relock(): void {
    this.search.unlockTo(0);
    this.caps.forEach((cap, i) => this.search.lock(this.costs[i] as Float64Array, cap));
  }

  private improve(costs: Float64Array, share: number): void {
    this.search.improve(costs, share * this.steps, () => this.tell());
  }

  private progress(i: number): void {
    this.options.onProgress?.({ level: LEVELS[i] as Level, lostGrams: this.best.verdict.score.wasteGrams, boundGrams: this.lossBound });
  }

  /** Each column of the level at the bound that its cost likes: there is nothing to gain. */
  private isSettled(costs: Float64Array, values: Float64Array): boolean {
    const { lower, upper } = this.model.programme;
    return costs.every((cost, i) => {
      if (cost === 0) return true;
      const like = (cost > 0 ? lower[i] : upper[i]) ?? 0;
      return Math.abs((values[i] ?? 0) - like) < 1e-7;
    });
  }

  private lastTold: Float64Array | null = null;

  /** Passes the best so far through the referee; a plan that it refuses, or that is worse than the rule's, is not told. */
  private tell(): void {
    const { search } = this;
    if (!search.best || search.best === this.lastTold) return;
    this.lastTold = search.best;
    const settled = search.settle(costsOf(this.model, EXACT), search.best) ?? search.best;
    const plan = planOf(this.model, settled);
    const verdict = checkSeasonPlan(this.model.season, plan);
    if (verdict.faults.length > 0 || (this.rule.verdict.faults.length === 0 && isWorse(verdict.score, this.rule.verdict.score))) return;
    this.best = { plan, verdict };
    this.options.onBetter?.(this.best);
    this.progress(Math.min(this.levels.length, LEVELS.length - 1));
  }

  private answer(status: Solved["status"]): Solved {
    const score = this.best.verdict.score;
    const unit = (i: number, inside: number): number => ((this.model.levels[i]?.constant ?? 0) + inside) * (this.model.levels[i]?.unit ?? 1);
    const levels = this.levels.map((result, i) => ({
      ...result,
      value: score[result.level],
      bound: result.bound === null || !Number.isFinite(result.bound) ? null : unit(i, result.bound),
    }));
    return { status, best: this.best, rule: this.rule, levels, stoppedEarly: this.search.cutShort, steps: this.search.spentSteps, seconds: this.search.spentSeconds };
  }
}

/** With the whole numbers fixed grams flow crop by crop, and a gram eaten or kept from loss costs at most one of the other: these weights keep the order. */
const EXACT = [1, 1, 0.1, 0, 0, 0, 0];

/** Level by level; a difference within the dust does not decide. */
export function isWorse(a: Score, b: Score): boolean {
  for (const level of LEVELS) {
    const [first, second] = level === "liking" ? [-a[level], -b[level]] : [a[level], b[level]];
    if (Math.abs(first - second) > (level === "wasteGrams" || level === "freshShortGrams" ? 0.6 : 0.02)) return first > second;
  }
  return false;
}
