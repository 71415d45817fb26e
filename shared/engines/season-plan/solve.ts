/**
 * The seven levels one after another, each held at its value (and its allowance) for the next. What is reported is what the referee
 * measures, and never worse than the simple rule. README, "Levels".
 */
import { checkSeasonPlan, type SeasonVerdict } from "./check.ts";
import { grainOf } from "./grain.ts";
import { KG } from "./model-columns.ts";
import { costsOf, planOf, wholesOf, type SeasonModel } from "./model.ts";
import { buildModel } from "./model.ts";
import type { Solver } from "./programme.ts";
import { planByRule } from "./rule.ts";
import { SeasonSearch } from "./search.ts";
import { LEVELS, type Level, type Score, type Season, type SeasonPlan } from "./types.ts";

export interface SolveOptions {
  /** Share of what is picked that later levels may cost the first, and the third. */
  readonly allowance: number;
  readonly secondsPerLevel: number;
  /** Only so many levels, from the first; all seven where it is left out. */
  readonly levels?: number;
  /** Told each better plan as it comes, already refereed. */
  readonly onBetter?: (found: Found) => void;
  readonly stop?: () => boolean;
}

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
  readonly seconds: number;
}

/** From this many whole numbers on a level is improved piece by piece before it is looked at as a whole. */
const LARGE = 300;
/** kg, %, kg, batches, points, minutes, batch-weeks: a search device for large seasons, not the definition of better (common practice, no source). */
const BLEND = [1, 0.05, 0.1, 0.01, 0.002, 2e-4, 1e-5];
/** A plan better than the rule's is wanted within 5 seconds. */
const ROLL_SECONDS = 4;
/** With strict levels what comes later only decides between plans that lose the same. */
const STRICT_BLEND = [1, 1e-4, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8];
/** Levels below what was asked for may raise the loss by no more than this share, whatever the allowance. */
const TASTE_SHARE = 0.02;

export function solveSeason(season: Season, solver: Solver, options: SolveOptions): Solved {
  const rulePlan = planByRule(season);
  const rule: Found = { plan: rulePlan, verdict: checkSeasonPlan(season, rulePlan) };
  const model = buildModel(season);
  const search = new SeasonSearch(model, solver);
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
  private readonly picked: number;
  /** Locks as they stand, by level. */
  private readonly caps: number[] = [];
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
    this.costs = LEVELS.map((_, i) => costsOf(model, LEVELS.map((_, k) => (k === i ? 1 : 0))));
    this.blend = costsOf(model, options.allowance > 0 ? BLEND : STRICT_BLEND);
    this.picked = model.season.crops.reduce((sum, { harvestGrams }) => sum + harvestGrams.reduce((all, weeks, s) => all + (model.season.scenarios[s]?.chance ?? 0) * weeks.reduce((a, b) => a + b, 0), 0), 0) / KG;
  }

  run(): Solved {
    const { search, rule, options } = this;
    const wholes = rule.verdict.faults.length === 0 ? wholesOf(this.model, rule.plan) : null;
    search.best = wholes ? search.settle(this.blend, wholes) : null;
    this.tell();
    if (this.large) this.firstPlans();
    for (let i = 0; i < (options.levels ?? LEVELS.length); i++) {
      if (!this.level(i)) return this.answer("infeasible");
      if (i === 1 && options.allowance > 0) this.lossDownAgain();
    }
    if (options.allowance > 0) this.closingPass();
    this.tell();
    return this.answer(this.levels.every(({ proven }) => proven) ? "optimal" : "feasible");
  }

  /** A large season: once through it week by week, then all levels in one blend, as a whole and piece by piece. */
  private firstPlans(): void {
    const { search, blend, options } = this;
    search.rollForward(blend, Math.min(ROLL_SECONDS, options.secondsPerLevel), () => this.stopped);
    this.tell();
    if (!this.stopped) search.whole(blend, 2.5 * options.secondsPerLevel, 0.01);
    this.tell();
    this.improve(blend, options.secondsPerLevel);
  }

  private get large(): boolean {
    return this.search.size > LARGE;
  }

  private get stopped(): boolean {
    return this.options.stop?.() ?? false;
  }

  /** False when there is no plan at all. */
  private level(i: number): boolean {
    const { search, options } = this;
    const costs = this.costs[i] as Float64Array;
    const level = LEVELS[i] as Level;
    const atBest = search.best !== null && this.isSettled(costs, search.best);
    let proven = atBest;
    let bound: number | null = null;
    let least = search.best ? search.valueOf(costs, search.best) : Infinity;
    if (!atBest && !this.stopped) {
      const before = search.best;
      const share = i === 1 ? 0.6 : 0.2;
      if (this.large ? i > 0 : this.model.season.scenarios.length > 1) this.improve(costs, options.secondsPerLevel * share);
      const solved = search.whole(costs, this.large && i > 0 ? options.secondsPerLevel * share : options.secondsPerLevel, 0.99 * grainOf(this.model.season, level));
      if (solved.status === "none") return false;
      if (this.large && i === 0 && !before) search.best = solved.values;
      if (this.large && i === 0 && options.allowance === 0) this.improve(this.blend, options.secondsPerLevel);
      if (!search.best) return false;
      least = Math.min(solved.value, search.valueOf(costs, search.best));
      proven = solved.status === "optimal";
      bound = proven ? least : Math.min(solved.bound, least);
      // with an allowance the blended plan is the better start, as long as it loses no more than that
      if (this.large && i === 0 && before && options.allowance > 0 && search.valueOf(costs, before) <= this.capOf(i, least)) search.best = before;
    }
    this.levels.push({ level, value: least, bound: bound ?? (proven ? least : null), proven });
    this.caps[i] = this.capOf(i, least);
    search.lock(costs, this.caps[i]);
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
    const { search, options } = this;
    const loss = this.costs[0] as Float64Array;
    if (!search.best) return;
    if (!this.stopped) search.whole(loss, options.secondsPerLevel, 0.99 * grainOf(this.model.season, "wasteGrams"));
    if (!this.large) return;
    this.improve(loss, 1.5 * options.secondsPerLevel);
    const least = search.valueOf(loss, search.best);
    this.caps[0] = Math.min(this.caps[0] ?? Infinity, least * (1 + TASTE_SHARE) + 0.5 / KG);
    this.relock();
  }

  /** What is left of the allowance is not spent for nothing: loss down once more, everything later held. */
  private closingPass(): void {
    const { search, options } = this;
    const loss = this.costs[0] as Float64Array;
    if (this.stopped || !search.best) return;
    if (this.large) this.improve(loss, options.secondsPerLevel);
    else search.whole(loss, options.secondsPerLevel, 0.99 * grainOf(this.model.season, "wasteGrams"));
  }

  private relock(): void {
    this.search.unlockTo(0);
    this.caps.forEach((cap, i) => this.search.lock(this.costs[i] as Float64Array, cap));
  }

  private improve(costs: Float64Array, seconds: number): void {
    this.search.improve(costs, seconds, () => {
      this.tell();
      return this.stopped;
    });
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
  }

  private answer(status: Solved["status"]): Solved {
    const score = this.best.verdict.score;
    const unit = (i: number, inside: number): number => ((this.model.levels[i]?.constant ?? 0) + inside) * (this.model.levels[i]?.unit ?? 1);
    const levels = this.levels.map((result, i) => ({
      ...result,
      value: score[result.level],
      bound: result.bound === null || !Number.isFinite(result.bound) ? null : unit(i, result.bound),
    }));
    return { status, best: this.best, rule: this.rule, levels, seconds: this.search.spent };
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
