/** A season that was planned → the answer in words: week by week what to make and why, what is lost, asked for, in the freezer, in the way. */
import { checkSeasonPlan, type Batches, type SeasonPlan, type SeasonVerdict } from "../engines/season-plan/index.ts";
import { cropWord } from "../kernel/crop-words.ts";
import { addWeeks } from "../kernel/iso-week.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import { weekSpanWords } from "../kernel/words.ts";
import { askedWords, courseWords, headlineOf, helpWords, lossWords } from "./season-answer-words.ts";
import type { AskedLine, CourseLine, FreezerWeeks, HelpLine, RefusedLine, SeasonAnswerWords, WithoutAnswer } from "./season-answer-types.ts";
import { answerWeeks } from "./season-answer-weeks.ts";
import { fareIn, pickedGrams, type Fare } from "./season-fare.ts";
import { lossyWeeks, usedOf } from "./season-in-the-way.ts";
import type { SeasonFacts } from "./season-facts.ts";
import type { SeasonInstance } from "./season-instance.ts";
import { SeasonWhy } from "./season-why.ts";

/** What was worked out of the season that is left to plan; `byRule` is the simple rule's. */
export interface WorkedOut {
  readonly status: "optimal" | "feasible" | "infeasible" | "rule";
  readonly plan: SeasonPlan;
  readonly verdict: SeasonVerdict;
  readonly byRule: SeasonVerdict;
  readonly gapPct: number | null;
  /** What takes the place of a line and what one step more of a limit saves; only where somebody has worked it out. */
  readonly instead: readonly { readonly line: Batches; readonly instead: readonly Batches[] }[];
  readonly helps: readonly { readonly week: number; readonly helps: readonly { readonly resource: string; readonly unit: string; readonly more: number; readonly savesGrams: number }[] }[];
}

export function seasonAnswer(facts: SeasonFacts, instance: SeasonInstance, done: WorkedOut): SeasonAnswerWords {
  const { whole, weeks, ask, names, refused, clashes } = instance;
  const lines = allLines(instance, done.plan.planned);
  const verdict = refereed(instance, done.plan, lines);
  const lostIn = (of: SeasonVerdict): number => Math.round((of.courses[0]?.lostGrams ?? []).reduce((sum, row) => sum + row.slice(weeks.first).reduce((all, grams) => all + grams, 0), 0));
  const [lostGrams, byRuleGrams] = [lostIn(verdict), lostIn(done.byRule)];
  const plannedBy: "rule" | "solver" = done.status === "rule" || done.status === "infeasible" ? "rule" : "solver";
  const asked = askedLines(facts, instance, verdict, lines);
  const shown = { ask, status: clashes.length > 0 ? ("infeasible" as const) : done.status, plannedBy, lostGrams, byRuleGrams, asked, lines: lines.length, pickedGrams: pickedGrams(whole), recipes: facts.recipes.length };
  return {
    from: ask.from,
    asOf: facts.garden.asOf,
    status: shown.status,
    plannedBy: shown.plannedBy,
    gapPct: done.gapPct === null ? null : Math.round(done.gapPct * 10) / 10,
    allowance: ask.allowance,
    headline: headlineOf(shown),
    pickedGrams: shown.pickedGrams,
    lostGrams,
    byRule: { lostGrams: byRuleGrams, missingPct: Math.round(done.byRule.score.targetShort) },
    missingPct: Math.round(done.verdict.score.targetShort),
    weeks: answerWeeks({ facts, instance, plan: done.plan, lines, verdict, why: new SeasonWhy(whole, { planned: lines.filter(({ method }) => whole.methods.some(({ id }) => id === method)) }), instead: done.instead }),
    courses: courseLines(instance, done),
    asked,
    freezer: freezerWeeks(instance, lines, verdict),
    withoutAnswer: withoutAnswer(instance, done, names),
    refused: refusedLines(instance, refused),
    clashes: [...clashes],
    notes: [...instance.notes],
    basis: basisOf(),
  };
}

/** Agreed and proposed, one line for each recipe and week. */
function allLines({ agreed }: SeasonInstance, planned: readonly Batches[]): Batches[] {
  const sums = new Map<string, Batches>();
  for (const line of [...agreed.map(({ recipe, week, batches }) => ({ method: recipe.id, week, batches })), ...planned]) {
    const key = `${line.week} ${line.method}`;
    sums.set(key, { ...line, batches: line.batches + (sums.get(key)?.batches ?? 0) });
  }
  return [...sums.values()].filter(({ batches }) => batches > 0).sort((a, b) => a.week - b.week || (a.method < b.method ? -1 : 1));
}

/** The referee over everything that is shown, agreed lines and proposed ones together, against all there is. */
function refereed({ whole, toPlan }: SeasonInstance, plan: SeasonPlan, lines: readonly Batches[]): SeasonVerdict {
  const known = lines.filter(({ method }) => whole.methods.some(({ id }) => id === method));
  const course = plan.outcomes[toPlan[0]?.scenarios[0]?.id ?? ""] ?? { made: [], eat: [], give: [], draw: [] };
  return checkSeasonPlan(whole, { planned: known, outcomes: { [whole.scenarios[0]?.id ?? ""]: { ...course, made: known } } });
}

function courseLines({ courses, toPlan }: SeasonInstance, done: WorkedOut): CourseLine[] {
  const [usual] = toPlan;
  return courses.map(({ id, chance }, i) => {
    const season = toPlan[i];
    const asPlanned: Fare = { pickedGrams: usual ? pickedGrams(usual) : 0, lostGrams: Math.round(done.verdict.score.wasteGrams), unmadeBatches: 0, moreBatches: 0 };
    const fare = i === 0 || !season || !usual ? asPlanned : fareIn(usual, season, done.plan);
    return { id, chance: Math.round(chance * 100) / 100, ...fare, text: courseWords(id, chance, fare) };
  });
}

function askedLines(facts: SeasonFacts, { whole, weeks }: SeasonInstance, verdict: SeasonVerdict, lines: readonly Batches[]): AskedLine[] {
  const title = (id: string): string => facts.recipes.find((recipe) => recipe.id === id)?.title ?? "";
  const inStore = (methods: readonly string[], week: number): number => Math.floor(whole.methods.reduce((sum, { id }, m) => sum + (methods.includes(id) ? (verdict.courses[0]?.storePortions[m]?.[week] ?? 0) : 0), 0) + 1e-6);
  const opening = (methods: readonly string[]): number => whole.methods.reduce((sum, { id, opening: there }) => sum + (methods.includes(id) ? there : 0), 0);
  const made = (methods: readonly string[], from: number, until: number): number => lines.reduce((sum, { method, week, batches }) => sum + (methods.includes(method) && week >= from && week < until ? batches * (whole.methods.find(({ id }) => id === method)?.portions ?? 0) : 0), 0);
  const shownWeeks = weeks.weeks.map((week, t) => ({ week, t })).slice(weeks.first);
  const line = (kind: "target" | "wish", asked: { id: string; methods: readonly string[]; portions: number }, by: string | null, reachedPortions: number): AskedLine => {
    const recipeId = [...facts.targets, ...facts.wishes].find(({ id }) => id === asked.id)?.recipeId ?? "";
    const missingPortions = Math.max(0, asked.portions - reachedPortions);
    const words = { title: title(recipeId), portions: asked.portions, reachedPortions, missingPortions, by };
    return { id: asked.id, kind, recipeId, ...words, inLarderPortions: opening(asked.methods), byWeek: shownWeeks.map(({ week, t }) => ({ week, portions: inStore(asked.methods, t) })), text: askedWords(kind, words, facts.garden.asOf) };
  };
  return [
    ...whole.targets.map((target) => line("target", target, facts.targets.find(({ id }) => id === target.id)?.by ?? null, inStore(target.methods, target.atWeek))),
    ...whole.wishes.map((wish) => line("wish", wish, facts.wishes.find(({ id }) => id === wish.id)?.by ?? null, made(wish.methods, wish.from, wish.until))),
  ];
}

function freezerWeeks({ whole, weeks, limits }: SeasonInstance, lines: readonly Batches[], verdict: SeasonVerdict): FreezerWeeks {
  const { freezerLitres, freezerUsed } = limits;
  const modelled = whole.methods.reduce((sum, { opening, portions, perBatch }) => sum + (opening / portions) * (perBatch["freezer"] ?? 0), 0);
  const other = Math.max(0, freezerUsed - modelled);
  return {
    litres: freezerLitres,
    weeks: weeks.weeks.map((week, t) => ({ week, usedLitres: Math.round((other + usedOf(whole, lines, verdict, "freezer", "held", t)) * 10) / 10, capacityLitres: freezerLitres })).slice(weeks.first),
  };
}

function withoutAnswer({ toPlan, weeks }: SeasonInstance, done: WorkedOut, names: ReadonlyMap<string, string>): WithoutAnswer[] {
  const season = toPlan[0];
  if (!season) return [];
  return lossyWeeks(season, done.plan.planned, done.verdict, weeks.first).map((lossy) => {
    const crops = lossy.crops.map((crop) => cropWord(names.get(crop) ?? crop));
    const helps = (done.helps.find(({ week }) => week === lossy.week)?.helps ?? []).map(({ resource, unit, more, savesGrams }): HelpLine => ({ limit: resource, unit, more, savesGrams: Math.round(savesGrams), text: helpWords(resource, unit, more, savesGrams) }));
    return { week: addWeeks(season.firstWeek, lossy.week), lostGrams: lossy.lostGrams, crops: [...lossy.crops], helps, text: lossWords({ ...lossy, crops }, weekSpanWords(addWeeks(season.firstWeek, lossy.week), addWeeks(season.firstWeek, lossy.week))) };
  });
}

function refusedLines({ whole }: SeasonInstance, refused: SeasonInstance["refused"]): RefusedLine[] {
  return refused.map(({ recipe, why }) => {
    const crops = new Set(recipe.uses.map(({ crop }) => crop));
    const instead = whole.methods.filter(({ sessionBatches, uses }) => sessionBatches.max > 0 && uses.some(({ crop }) => crops.has(crop)));
    return { recipeId: recipe.id, title: recipe.title, why, instead: instead.slice(0, MOST_INSTEAD).map(({ id, title }) => ({ recipeId: id, title })) };
  });
}

const MOST_INSTEAD = 4;

function basisOf(): SourceRef[] {
  return [{ id: "CP", text: "Room of boxes, minutes of an oven and what is eaten from the stores in a week: common practice, no source" }];
}
