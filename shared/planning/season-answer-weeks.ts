/** The weeks of the season's plan: what is made in each, of what, and why; what is given; what a week without a line is for. */
import type { Batches, SeasonPlan, SeasonVerdict } from "../engines/season-plan/index.ts";
import { weekEnd, weekStart } from "../kernel/iso-week.ts";
import { weighedWords } from "../kernel/words.ts";
import { insteadWords } from "./season-answer-words.ts";
import { useOf } from "./season-agreed.ts";
import type { PlannedLineWords, PlannedWeek } from "./season-answer-types.ts";
import type { SeasonFacts, SeasonRecipe } from "./season-facts.ts";
import type { SeasonInstance } from "./season-instance.ts";
import { mainUses } from "./season-methods.ts";
import { whyWords, type SeasonWhy } from "./season-why.ts";

export interface WeeksQuestion {
  readonly facts: SeasonFacts;
  readonly instance: SeasonInstance;
  readonly plan: SeasonPlan;
  /** Agreed and proposed together. */
  readonly lines: readonly Batches[];
  readonly verdict: SeasonVerdict;
  readonly why: SeasonWhy;
  readonly instead: readonly { readonly line: Batches; readonly instead: readonly Batches[] }[];
}

export function answerWeeks(question: WeeksQuestion): PlannedWeek[] {
  const { instance, verdict, plan, lines, facts } = question;
  const { weeks, whole } = instance;
  const course = Object.values(plan.outcomes)[0];
  const hours = whole.resources.find(({ id }) => id === "hands-on")?.amount ?? [];
  return weeks.weeks.flatMap((week, t): PlannedWeek[] => {
    if (t < weeks.first) return [];
    const made = lines.filter((line) => line.week === t).flatMap((line) => lineOf(question, line));
    const given = (course?.give ?? []).filter((line) => line.week === t && line.grams >= 1).flatMap((line) => giftOf(facts, instance, line.crop, line.grams));
    const pickedGrams = whole.crops.reduce((sum, { harvestGrams }) => sum + (harvestGrams[0]?.[t] ?? 0), 0);
    const lostGrams = Math.round((verdict.courses[0]?.lostGrams ?? []).reduce((sum, row) => sum + (row[t] ?? 0), 0));
    const away = (weeks.atHome[t] ?? 1) < 0.5;
    const all = [...made, ...given];
    return [
      {
        week,
        starts: weekStart(week),
        ends: weekEnd(week),
        away,
        pickedGrams,
        freshGrams: Math.round((course?.eat ?? []).reduce((sum, line) => sum + (line.week === t ? line.grams : 0), 0)),
        lostGrams,
        handsOnMin: made.reduce((sum, { handsOnMin }) => sum + handsOnMin, 0),
        handsOnMostMin: hours[t] ?? 0,
        text: all.length > 0 ? "" : idleWords(away, pickedGrams, lostGrams),
        lines: all,
      },
    ];
  });
}

function lineOf({ facts, instance, why, instead }: WeeksQuestion, line: Batches): PlannedLineWords[] {
  const { whole, names, agreed } = instance;
  const recipe = facts.recipes.find(({ id }) => id === line.method);
  if (!recipe) return [];
  const agreedIds = agreed.filter((one) => one.recipe.id === recipe.id && one.week === line.week).flatMap(({ ids }) => ids);
  const titles = new Map([...facts.targets, ...facts.wishes].map(({ id, recipeId }) => [id, facts.recipes.find((one) => one.id === recipeId)?.title.toLowerCase() ?? "what was asked for"]));
  const planned = whole.methods.some(({ id }) => id === line.method);
  const replaced = instead.find((one) => one.line.method === line.method && one.line.week === line.week);
  return [
    {
      ...wordsOf(recipe, line.batches),
      uses: mainUses(recipe).map(({ crop, grams }) => ({ crop, name: names.get(crop) ?? crop, grams: Math.round(grams * line.batches) })),
      why: planned ? whyWords(why.of(line), names, whole.firstWeek, titles) : "It was agreed for this week.",
      ...(replaced ? { displaces: insteadWords(replaced.instead, new Map(whole.methods.map(({ id, title }) => [id, title.toLowerCase()]))) } : {}),
      agreedIds: [...agreedIds],
    },
  ];
}

function wordsOf(recipe: SeasonRecipe, batches: number): Omit<PlannedLineWords, "uses" | "why" | "displaces" | "agreedIds"> {
  const of = (limit: string): number => Math.round(useOf({ recipe, batches }, limit) * 10) / 10;
  return {
    recipeId: recipe.id,
    title: recipe.title,
    way: recipe.way,
    batches,
    makes: { amount: Math.round(recipe.makes.amount * batches * 100) / 100, unit: recipe.makes.unit },
    handsOnMin: of("hands-on"),
    freezerLitres: of("freezer"),
    jars: of("jar"),
  };
}

/** What is given away is a line of its own, in whole bags. */
function giftOf({ recipes }: SeasonFacts, { names }: SeasonInstance, crop: string, grams: number): PlannedLineWords[] {
  const recipe = recipes.find(({ way, uses }) => way === "give" && uses.length === 1 && uses[0]?.crop === crop);
  const bag = recipe?.uses[0]?.grams ?? 0;
  if (!recipe || bag <= 0) return [];
  const whole = Math.round(grams);
  return [{ ...wordsOf(recipe, Math.max(1, Math.round(grams / bag))), uses: [{ crop, name: names.get(crop) ?? crop, grams: whole }], why: `${weighedWords(whole)} to give before it goes off.`, agreedIds: [] }];
}

function idleWords(away: boolean, pickedGrams: number, lostGrams: number): string {
  if (away && lostGrams > 0) return "Nobody is at home to use what ripens.";
  if (away) return "Nobody is at home.";
  if (lostGrams > 0) return "Nothing fits for what goes off this week.";
  return pickedGrams === 0 ? "Nothing ripens." : "All of it is eaten fresh or keeps.";
}
