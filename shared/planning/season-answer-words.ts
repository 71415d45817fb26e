/** Sentences of the season's plan. */
import type { Batches } from "../engines/season-plan/index.ts";
import { dayWords, minutesWords, listWords, sentenceCase, weekSpanWords, weighedWords } from "../kernel/words.ts";
import { addWeeks } from "../kernel/iso-week.ts";
import { yearOf, type LocalDate } from "../kernel/local-date.ts";
import { NAMES } from "./season-agreed.ts";
import type { AskedLine } from "./season-answer-types.ts";
import type { CourseId } from "./season-courses.ts";
import type { Fare } from "./season-fare.ts";
import type { SeasonAsk } from "./season-facts.ts";

export interface Shown {
  readonly ask: SeasonAsk;
  readonly status: "optimal" | "feasible" | "infeasible" | "rule";
  readonly plannedBy: "rule" | "solver";
  readonly lostGrams: number;
  readonly byRuleGrams: number;
  readonly asked: readonly AskedLine[];
  readonly lines: number;
  readonly pickedGrams: number;
  readonly recipes: number;
}

export function headlineOf({ ask, status, plannedBy, lostGrams, byRuleGrams, asked, lines, pickedGrams, recipes }: Shown): string {
  const span = weekSpanWords(ask.from, addWeeks(ask.from, ask.weeks - 1));
  if (pickedGrams === 0) return `Nothing ripens and nothing is on hand in ${span}, so there is nothing to plan.`;
  if (recipes === 0) return `There is no recipe to plan with: ${weighedWords(pickedGrams)} ripen in ${span}.`;
  if (status === "infeasible") return `What is agreed for ${span} does not fit into what there is.`;
  const lost = lostGrams < 1 ? "nothing is lost" : `${weighedWords(lostGrams)} would be lost`;
  const rule = plannedBy === "solver" && byRuleGrams > lostGrams + 1 ? `, where the simple rule loses ${weighedWords(byRuleGrams)}` : "";
  const missing = asked.filter(({ missingPortions }) => missingPortions > 0);
  const wants = asked.length === 0 ? "" : missing.length === 0 ? "; all that was asked for is there" : `; ${missing.length} of ${asked.length} things asked for fall short`;
  const by = plannedBy === "rule" ? " By the simple rule." : "";
  return `Of ${weighedWords(pickedGrams)} in ${span}, ${lost}${rule}${wants}${lines === 0 ? "; nothing has to be cooked ahead" : ""}.${by}`;
}

const COURSE: Readonly<Record<CourseId, string>> = { poor: "A poor year", usual: "A usual year", good: "A good year" };

export function courseWords(id: CourseId, chance: number, { pickedGrams, lostGrams, unmadeBatches, moreBatches }: Fare): string {
  const share = `${Math.round(chance * 10)} of 10 years`;
  const batches = (count: number): string => `${count} ${count === 1 ? "batch" : "batches"}`;
  const unmade = unmadeBatches === 0 ? "all that is planned can be made" : `${batches(unmadeBatches)} cannot be made for want of produce`;
  const more = moreBatches === 0 ? "" : `, ${batches(moreBatches)} more ${moreBatches === 1 ? "is" : "are"} frozen as it comes`;
  return `${COURSE[id]} (${share}): ${weighedWords(pickedGrams)} come, ${unmade}${more}, ${lostGrams < 1 ? "nothing is lost" : `${weighedWords(lostGrams)} are lost`}.`;
}

export function askedWords(kind: AskedLine["kind"], { title, portions, reachedPortions, missingPortions, by }: Pick<AskedLine, "title" | "portions" | "reachedPortions" | "missingPortions" | "by">, today: LocalDate): string {
  const when = by === null ? "" : ` by ${dayWords(by, yearOf(today))}`;
  const asked = kind === "target" ? `${portions} wanted in store${when}` : `${portions} asked for${when}`;
  return `${title}: ${asked}, ${missingPortions === 0 ? "all there" : `${reachedPortions} reached, ${missingPortions} short`}.`;
}

const STEP_WORDS: Readonly<Record<string, (more: number) => string>> = {
  min: (more) => `${minutesWords(more)} more`,
  l: (more) => `${more}\u00a0l more`,
  g: (more) => `${weighedWords(more)} more`,
  ml: (more) => `${more}\u00a0ml more`,
};

export function helpWords(resource: string, unit: string, more: number, savesGrams: number): string {
  return `${STEP_WORDS[unit]?.(more) ?? `${more} more`} of ${NAMES[resource] ?? resource} would save ${weighedWords(savesGrams)}.`;
}

export function lossWords({ lostGrams, crops, limits, noRecipe }: { lostGrams: number; crops: readonly string[]; limits: readonly string[]; noRecipe: boolean }, week: string): string {
  const what = `${weighedWords(lostGrams)} of ${listWords(crops)} would be lost in ${week}`;
  if (noRecipe) return `${what}: no recipe takes ${crops.length === 1 ? "it" : "any of it"}.`;
  if (limits.length === 0) return `${what}: less than a batch takes.`;
  return `${what}. ${inTheWayWords(limits)}`;
}

/** "The lids, bags and vinegar are in the way." */
function inTheWayWords(limits: readonly string[]): string {
  const names = limits.map((id) => NAMES[id] ?? id);
  const several = names.length > 1 || PLURAL.has(limits[0] as string);
  return `${sentenceCase(listWords(names.map((name, i) => (i === 0 ? name : name.replace(/^the /, "")))))} ${several ? "are" : "is"} in the way.`;
}

const PLURAL: ReadonlySet<string> = new Set(["hands-on", "meals", "jar", "lid", "bag"]);

/** What would take a line's place. */
export function insteadWords(instead: readonly Batches[], titles: ReadonlyMap<string, string>): string {
  if (instead.length === 0) return "Nothing would take its place.";
  return `With one batch less: ${listWords(instead.slice(0, 3).map(({ method, batches }) => `${batches} more of ${titles.get(method) ?? "another recipe"}`))}.`;
}
