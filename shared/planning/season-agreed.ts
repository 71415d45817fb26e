/** What is agreed, taken off a season before it is planned: its produce from the lots that go off first, its minutes, its room and jars, and what was asked for. */
import type { Batches, Resource, Season, SeasonCrop } from "../engines/season-plan/index.ts";
import { addWeeks } from "../kernel/iso-week.ts";
import { measuredWords, weekSpanWords } from "../kernel/words.ts";
import type { SeasonFacts, SeasonRecipe } from "./season-facts.ts";
import { mainUses, portionsOf, roomOf } from "./season-methods.ts";
import type { SeasonWeeks } from "./season-weeks.ts";

export interface AgreedLine {
  readonly ids: readonly string[];
  readonly recipe: SeasonRecipe;
  /** Of the season. */
  readonly week: number;
  readonly batches: number;
}

/** Plan lines from the first week asked for on, one for each recipe and week. */
export function agreedLines({ kitchen, recipes }: Pick<SeasonFacts, "kitchen" | "recipes">, weeks: SeasonWeeks): AgreedLine[] {
  const byRecipe = new Map(recipes.map((recipe) => [recipe.id, recipe]));
  const lines = new Map<string, AgreedLine>();
  for (const { id, week, recipeId, batches } of kitchen.planLines) {
    const t = weeks.weeks.indexOf(week);
    const recipe = byRecipe.get(recipeId);
    if (t < weeks.running || !recipe) continue;
    const before = lines.get(`${t} ${recipeId}`);
    lines.set(`${t} ${recipeId}`, { ids: [...(before?.ids ?? []), id], recipe, week: t, batches: (before?.batches ?? 0) + batches });
  }
  return [...lines.values()].sort((a, b) => a.week - b.week || (a.recipe.id < b.recipe.id ? -1 : 1));
}

export function lessAgreed(season: Season, agreed: readonly AgreedLine[]): { season: Season; clashes: string[] } {
  const clashes: string[] = [];
  const crops = season.crops.map((crop) => lessProduce(crop, agreed, clashes, season.firstWeek));
  const resources = season.resources.map((resource) => lessResource(resource, agreed, clashes, season.firstWeek));
  const made = (methods: readonly string[], from: number, until: number): number =>
    agreed.reduce((sum, { recipe, week, batches }) => sum + (methods.includes(recipe.id) && week >= from && week < until ? batches * portionsOf(recipe.makes) : 0), 0);
  const targets = season.targets.map((target) => ({ ...target, portions: target.portions - made(target.methods, 0, target.atWeek + 1) })).filter(({ portions }) => portions > 0);
  const wishes = season.wishes.map((wish) => ({ ...wish, portions: wish.portions - made(wish.methods, wish.from, wish.until) })).filter(({ portions }) => portions > 0);
  return { season: { ...season, crops, resources, targets, wishes, atMost: roomBeside(season, agreed) }, clashes };
}

/** A session is no longer because a part of it is agreed. */
function roomBeside({ methods }: Season, agreed: readonly AgreedLine[]): Batches[] {
  return agreed.flatMap(({ recipe, week, batches }) => {
    const method = methods.find(({ id }) => id === recipe.id);
    return method ? [{ method: recipe.id, week, batches: Math.max(0, method.sessionBatches.max - batches) }] : [];
  });
}

/** From what goes off first of what is there in the week; what is short has to be bought. */
function lessProduce(crop: SeasonCrop, agreed: readonly AgreedLine[], clashes: string[], firstWeek: string): SeasonCrop {
  const harvest = [...(crop.harvestGrams[0] ?? [])];
  for (const { recipe, week, batches } of agreed) {
    let open = (mainUses(recipe).find((use) => use.crop === crop.crop)?.grams ?? 0) * batches;
    for (let picked = Math.max(0, week - crop.keepWeeks + 1); picked <= week && open > 0; picked++) {
      const taken = Math.min(open, harvest[picked] ?? 0);
      harvest[picked] = (harvest[picked] ?? 0) - taken;
      open -= taken;
    }
    if (open >= 1 && harvest.some((grams) => grams > 0)) clashes.push(`${recipe.title} takes ${measuredWords(open)} more of ${crop.crop} than is left for it in ${weekSpanWords(addWeeks(firstWeek, week), addWeeks(firstWeek, week))}.`);
  }
  return { ...crop, harvestGrams: [harvest] };
}

function lessResource(resource: Resource, agreed: readonly AgreedLine[], clashes: string[], firstWeek: string): Resource {
  const amount = [...resource.amount];
  for (const line of agreed) {
    const use = useOf(line, resource.id);
    if (use <= 0) continue;
    for (let t = line.week; t < (resource.kind === "weekly" ? line.week + 1 : amount.length); t++) amount[t] = (amount[t] ?? 0) - use;
  }
  const worst = amount.reduce((least, left, t) => (left < (amount[least] ?? 0) ? t : least), 0);
  if ((amount[worst] ?? 0) < 0) clashes.push(`What is agreed takes ${Math.round(-(amount[worst] ?? 0) * 10) / 10} ${resource.unit} more of ${NAMES[resource.id] ?? resource.id} than there is${resource.kind === "weekly" ? ` in ${weekSpanWords(addWeeks(firstWeek, worst), addWeeks(firstWeek, worst))}` : ""}.`);
  return { ...resource, amount: amount.map((left) => Math.max(0, left)) };
}

/** What a line takes of a limit; room and jars until somebody eats it. */
export function useOf({ recipe, batches }: Pick<AgreedLine, "recipe" | "batches">, resource: string): number {
  const next = recipe.handsOnNextMin ?? recipe.handsOnMin;
  const grams = recipe.uses.reduce((sum, use) => sum + use.grams, 0);
  const counted = (unit: RegExp): number => (unit.test(recipe.makes.unit) ? Math.ceil(recipe.makes.amount) * batches : 0);
  const frozen = recipe.keeps.some(({ place }) => place === "freezer");
  if (resource === "hands-on") return Math.max(0, recipe.handsOnMin - next) + next * batches;
  if (resource === "oven") return recipe.ovenMin * batches;
  if (resource === "freezer") return frozen ? roomOf(recipe) * batches : 0;
  if (resource === "freezing") return frozen ? Math.round(grams) * batches : 0;
  if (resource === "jar") return counted(/^jars?\b/i);
  if (resource === "lid") return recipe.process === null ? 0 : counted(/^jars?\b/i);
  if (resource === "bag") return counted(/^bags?\b/i);
  if (resource === "sugar" || resource === "vinegar") return (recipe.supplies[resource] ?? 0) * batches;
  return 0;
}

export const NAMES: Readonly<Record<string, string>> = {
  "hands-on": "the hours in the kitchen",
  oven: "the oven",
  meals: "the meals of a week",
  freezing: "what the freezer freezes in a week",
  freezer: "the room in the freezer",
  fridge: "the room in the fridge",
  cellar: "the room in the cellar",
  jar: "the jars",
  lid: "the lids",
  bag: "the bags",
  sugar: "the sugar",
  vinegar: "the vinegar",
};
