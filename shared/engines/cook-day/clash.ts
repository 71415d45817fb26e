/**
 * Why there is no plan, and what would help. A deletion filter over the named limits leaves a smallest set that clashes: each
 * limit is taken out in turn, and stays out if the rest is impossible without it. Ways out are loosenings of what is left, each
 * solved on the whole day before it is said. One conflict of a search costs one.
 */
import { copiesOf } from "./copies.ts";
import { projectOf } from "./day-to-lags.ts";
import { movedTogether, namedLimits, type Change, type NamedLimit } from "./limits.ts";
import { horizonOf, onGrid, overfull } from "./project.ts";
import { Search } from "./search.ts";
import type { Clash, CookDayInput } from "./types.ts";
import { windowsOf } from "./windows.ts";
import { clashWords, listWords, needWords } from "./words.ts";

/** Most clashes that are told at once, and the conflicts that one question may cost. */
const MOST_CLASHES = 4;
const ONE_QUESTION = 2_000;
/** How far fixed times are moved, in steps of five minutes. */
const FIXED_MOVES = Array.from({ length: 12 }, (_, k) => 5 * (k + 1)).flatMap((by) => [by, -by]);

/** Clashes of a day that is proved impossible, and the conflicts that finding them has cost. */
export function explainClash(day: CookDayInput, conflicts: number): { clashes: Clash[]; used: number } {
  const asker = new Asker(conflicts);
  const found: { text: string; ways: Change[] }[] = [];
  let left = day;
  // That the day itself cannot be has been proved by whoever asks.
  let possible: boolean | undefined = false;
  // Where one change does not do, the first that undoes this clash is made and the rest is looked at again.
  while (possible === false && found.length < MOST_CLASHES) {
    const set = smallestClash(left, asker);
    const only = withoutAllBut(left, set);
    const text = clashWords(set.filter((limit) => limit.kind !== "dish"), natureOf(only));
    const ways = waysOut(left, set, asker);
    possible = ways.length > 0;
    const undoes = possible ? undefined : waysOut(only, set, asker)[0];
    found.push({ text, ways: undoes ? [undoes] : ways });
    if (!undoes) break;
    left = undoes.apply(left);
    possible = asker.canBe(left);
  }
  return { clashes: told(found, possible === true), used: asker.used };
}

/** With several clashes every way names one change for each of the others. */
function told(found: readonly { text: string; ways: readonly Change[] }[], solved: boolean): Clash[] {
  const last = found.length - 1;
  const before = found.slice(0, last).map(({ ways }) => ways[0]?.words ?? "");
  const ways = solved ? (found[last]?.ways ?? []).map((way) => `${listWords([...before, way.words].map((words, k) => (k === 0 ? words : lowered(words))))}.`) : [];
  return found.map(({ text }) => ({ text, ways }));
}

const lowered = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

/** Limits of a day that cannot be, of which each is needed for that; `withoutAllBut` gives the day that has only them. */
export function clashOf(day: CookDayInput, conflicts: number): NamedLimit[] {
  return smallestClash(day, new Asker(conflicts));
}

function smallestClash(day: CookDayInput, asker: Asker): NamedLimit[] {
  let left = day;
  const stays: NamedLimit[] = [];
  for (const limit of namedLimits(day)) {
    const without = limit.without(left);
    if (asker.canBe(without) === false) left = without;
    else stays.push(limit);
  }
  return stays;
}

/** The day with the given limits and none of the others. */
export function withoutAllBut(day: CookDayInput, stays: readonly NamedLimit[]): CookDayInput {
  const kept = new Set(stays.map(({ dish, words }) => `${dish} ${words}`));
  return namedLimits(day).reduce((left, limit) => (kept.has(`${limit.dish} ${limit.words}`) ? left : limit.without(left)), day);
}

/** For each limit of the clash the least loosening that helps; limits without one are left unsaid. */
function waysOut(day: CookDayInput, set: readonly NamedLimit[], asker: Asker): Change[] {
  const ways: Change[] = [];
  const fixed = set.filter((limit) => limit.kind === "fixed");
  const groups = fixed.length > 1 ? [fixed, ...fixed.map((limit) => [limit])] : fixed.map((limit) => [limit]);
  for (const group of groups) {
    const moved = FIXED_MOVES.map((by) => movedTogether(day, group, by)).find((change) => asker.helps(change, day));
    if (!moved) continue;
    ways.push(moved);
    break;
  }
  for (const limit of [...set].reverse()) for (const ladder of limit.ladders) ways.push(...leastRung(ladder, day, asker));
  return ways;
}

function leastRung(ladder: readonly Change[], day: CookDayInput, asker: Asker): Change[] {
  const last = ladder[ladder.length - 1];
  if (last === undefined || !asker.helps(last, day)) return [];
  let [low, high] = [0, ladder.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (asker.helps(ladder[middle] as Change, day)) high = middle;
    else low = middle + 1;
  }
  return [ladder[high] as Change];
}

/** Asks whether a day can be at all, and keeps account of what that costs. */
class Asker {
  used = 0;
  private readonly budget: number;

  constructor(budget: number) {
    this.budget = budget;
  }

  /** Whether a change gives a plan; one that leaves nothing to cook is no help. */
  helps(change: Change, day: CookDayInput): boolean {
    const changed = change.apply(day);
    return changed.dishes.some((dish) => dish.steps.length > 0) && this.canBe(changed) === true;
  }

  /** True with a plan in hand, false with a proof, undefined when the budget did not do. */
  canBe(day: CookDayInput): boolean | undefined {
    const { project } = onGrid(projectOf(day, copiesOf(day)));
    const windows = windowsOf(project);
    if (windows.cycle || overfull(project)) return false;
    const horizon = horizonOf(project);
    const search = new Search(project, windows, { horizon, latestEnd: horizon, enough: horizon });
    const status = search.run(Math.min(ONE_QUESTION, this.budget - this.used));
    this.used += search.conflicts;
    if (search.plan) return true;
    return status === "exhausted" ? false : undefined;
  }
}

/** What takes so long, or needs so much, that no order of the steps could help; empty where it is the order that fails. */
function natureOf(day: CookDayInput): readonly string[] {
  const model = copiesOf(day);
  const project = projectOf(day, model);
  const cycle = windowsOf(project).cycle;
  if (cycle) return cycle.map((lag) => lag.why);
  const short = overfull(project);
  const greedy = short?.uses.find((use) => use.amount > short.limit);
  const copy = greedy && model.copies[greedy.from - 1];
  return short && greedy && copy ? [needWords(day, copy, short.name, greedy.amount)] : [];
}
