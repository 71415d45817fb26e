/**
 * What a season's plan loses against what can be proved and against the simple rule. `--instances DIR` is a folder of seasons in the form
 * `season-plan/1`; otherwise one is drawn from `--crops N --recipes N --weeks N --seed N`. Levels in strict order unless `--allowance`.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { isWorse, LEVELS, planByRule, planSeason, readSeason, type Level, type Season, type SeasonAnswer } from "#shared/engines/season-plan/index.ts";
import { highsSolver } from "#server/season-desk-solver.ts";
import { drawnSeason } from "#tests/support/drawn-season.ts";
import { optionOf } from "./options.ts";

interface Known {
  readonly levels?: readonly { readonly level: Level; readonly value: number; readonly proven: boolean }[];
}

interface Measured {
  readonly name: string;
  readonly answer: SeasonAnswer;
  readonly ms: number;
  readonly ruleMs: number;
  /** Until a plan better than the rule's was there; null: none was. */
  readonly betterMs: number | null;
  readonly kgIn: number;
  /** Levels at which the plan is worse than what is known, or better than what is proved. */
  readonly offKnown: readonly Level[];
}

/** A level of a whole season is improved for so long and no longer; a small one is given time for its proof. */
const SECONDS_SMALL = 60;
const SECONDS_LARGE = 10;
/** Methods × weeks from which a season counts as large. */
const LARGE = 600;
const SECONDS_WITH_ALLOWANCE = 4.5;
/** A whole season is to be there within a minute, however busy the machine. */
const SECONDS_IN_ALL = 57;

export async function run(args: string[]): Promise<Record<string, unknown>> {
  const allowance = args.includes("--allowance") ? optionOf(args, "allowance", 0.02) : 0;
  const solver = await highsSolver();
  const measured: Measured[] = [];
  for (const { name, season, known } of seasonsOf(args)) {
    const usual = season.methods.length * season.weeks < LARGE ? SECONDS_SMALL : allowance > 0 ? SECONDS_WITH_ALLOWANCE : SECONDS_LARGE;
    const secondsPerLevel = optionOf(args, "seconds", usual);
    const ruleBegun = performance.now();
    planByRule(season);
    const ruleMs = performance.now() - ruleBegun;
    const begun = performance.now();
    let betterMs: number | null = null;
    const answer = planSeason(season, solver, {
      allowance,
      secondsPerLevel,
      ...(allowance > 0 ? { secondsInAll: SECONDS_IN_ALL } : {}),
      onBetter: ({ verdict }) => {
        if (betterMs === null && isWorse(planScore(season), verdict.score)) betterMs = performance.now() - begun;
      },
    });
    const one: Measured = { name, answer, ms: performance.now() - begun, ruleMs, betterMs, kgIn: kgOf(season), offKnown: allowance > 0 ? [] : offKnown(answer, known) };
    measured.push(one);
    console.error(`${name}: ${answer.status}, ${LEVELS.map((level) => `${level} ${shown(answer.verdict.score[level])} (rule ${shown(answer.byRule.score[level])})`).join(", ")}, ${one.ms.toFixed(0)} ms${one.offKnown.length > 0 ? ` NOT AS KNOWN: ${one.offKnown.join(", ")}` : ""}`);
  }
  const only = measured.length === 1 ? measured[0] : undefined;
  return {
    ...totals(measured),
    ...(only ? figures(only) : {}),
    byInstance: Object.fromEntries(measured.map((one) => [one.name, figures(one)])),
  };
}

function seasonsOf(args: readonly string[]): { name: string; season: Season; known: Known }[] {
  const at = args.indexOf("--instances");
  if (at < 0) {
    const sizes = { crops: optionOf(args, "crops", 20), methods: optionOf(args, "recipes", 40), weeks: optionOf(args, "weeks", 30), seed: optionOf(args, "seed", 1) };
    return [{ name: `drawn-${sizes.crops}x${sizes.methods}x${sizes.weeks}-${sizes.seed}`, season: read(drawnSeason(sizes), "the drawn season"), known: {} }];
  }
  const folder = args[at + 1];
  if (folder === undefined || !existsSync(folder)) throw new RangeError("--instances takes a folder that is there");
  const files = readdirSync(folder).filter((name) => name.endsWith(".json")).sort();
  return files.map((file) => {
    const json = JSON.parse(readFileSync(join(folder, file), "utf8")) as { known?: Known };
    return { name: basename(file, ".json"), season: read(json, file), known: json.known ?? {} };
  });
}

function read(json: unknown, name: string): Season {
  const result = readSeason(json);
  if (!result.ok) throw new RangeError(`${name}: ${(result.problem.fields ?? []).map(({ path, message }) => `${path}: ${message}`).join(" ")}`);
  return result.value;
}

const ruleScores = new WeakMap<Season, SeasonAnswer["verdict"]["score"]>();
function planScore(season: Season): SeasonAnswer["verdict"]["score"] {
  const known = ruleScores.get(season) ?? planSeason(season, null, { allowance: 0, secondsPerLevel: 0 }).verdict.score;
  ruleScores.set(season, known);
  return known;
}

/** Down the levels as far as they are the same question: after the first that differs the next is another one. */
function offKnown(answer: SeasonAnswer, { levels = [] }: Known): Level[] {
  for (const { level, value, proven } of levels) {
    const is = answer.verdict.score[level];
    const worse = level === "liking" ? value - is : is - value;
    const slack = level === "wasteGrams" || level === "freshShortGrams" ? 0.6 : 0.02;
    if (worse > slack || (proven && worse < -slack)) return [level];
    if (worse < -slack) return [];
  }
  return [];
}

function kgOf({ crops, scenarios }: Season): number {
  return crops.reduce((sum, { harvestGrams }) => sum + harvestGrams.reduce((all, weeks, s) => all + (scenarios[s]?.chance ?? 0) * weeks.reduce((a, b) => a + b, 0), 0), 0) / 1000;
}

function figures({ answer, ms, ruleMs, betterMs, kgIn, offKnown: off }: Measured): Record<string, unknown> {
  const bound = answer.levels[0]?.bound ?? null;
  const lost = answer.verdict.score.wasteGrams;
  return {
    status: answer.status,
    gapPct: answer.gapPct === null ? null : shown(answer.gapPct),
    ms: Math.round(ms),
    ruleMs: shown(ruleMs),
    betterThanRuleMs: betterMs === null ? null : Math.round(betterMs),
    kgIn: shown(kgIn),
    kgWasted: shown(lost / 1000),
    kgWastedByRule: shown(answer.byRule.score.wasteGrams / 1000),
    kgWastedBound: bound === null ? null : shown(bound / 1000),
    aboveBoundPct: bound === null || bound <= 0 ? null : shown((100 * (lost - bound)) / bound),
    objectives: Object.fromEntries(LEVELS.map((level) => [level, shown(answer.verdict.score[level])])),
    objectivesByRule: Object.fromEntries(LEVELS.map((level) => [level, shown(answer.byRule.score[level])])),
    stoppedEarly: answer.stoppedEarly,
    steps: answer.steps,
    proven: answer.levels.filter(({ proven }) => proven).map(({ level }) => level),
    offKnown: off,
    faults: answer.verdict.faults.length,
  };
}

function totals(measured: readonly Measured[]): Record<string, unknown> {
  const order = ["optimal", "feasible", "rule", "infeasible"] as const;
  const sum = (of: (one: Measured) => number): number => shown(measured.reduce((all, one) => all + of(one), 0));
  return {
    instances: measured.length,
    status: order[Math.max(...measured.map(({ answer }) => order.indexOf(answer.status)))] ?? null,
    gapPct: Math.max(...measured.map(({ answer }) => answer.gapPct ?? 100)),
    ms: Math.round(sum(({ ms }) => ms)),
    kgIn: sum(({ kgIn }) => kgIn),
    kgWasted: sum(({ answer }) => answer.verdict.score.wasteGrams / 1000),
    kgWastedByRule: sum(({ answer }) => answer.byRule.score.wasteGrams / 1000),
    objectives: Object.fromEntries(LEVELS.map((level) => [level, sum(({ answer }) => answer.verdict.score[level])])),
    offKnown: measured.filter(({ offKnown: off }) => off.length > 0).map(({ name }) => name),
    rssMb: Math.round(process.memoryUsage().rss / 1e6),
  };
}

function shown(value: number): number {
  return Math.round(value * 1000) / 1000;
}
