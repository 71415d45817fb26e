/**
 * Facts → a season for the planner, in its usual course, and what goes with it: the other courses, the weeks, what is refused. What is agreed is taken
 * off before anything is planned (season-agreed.ts), so every plan of the season keeps it to the batch.
 */
import { keepWeeksOf } from "../engines/glut/index.ts";
import type { Batches, Resource, Season, SeasonCrop, Target, Taste, Wish } from "../engines/season-plan/index.ts";
import { waitsForTheGrower } from "../kernel/crop-facts.ts";
import { weekOf, weekStart, type IsoWeek } from "../kernel/iso-week.ts";
import { dayNumber, yearOf, type LocalDate } from "../kernel/local-date.ts";
import { dayWords } from "../kernel/words.ts";
import { asKnown } from "./as-known.ts";
import { reckonGarden, type GardenReckoning } from "./garden-reckoning.ts";
import type { LotToday } from "./larder-facts.ts";
import { lotsToday, portionsInStore } from "./larder-lots.ts";
import type { CropOutlook } from "./outlook-supply.ts";
import { agreedLines, lessAgreed, type AgreedLine } from "./season-agreed.ts";
import { seasonCourses, type SeasonCourse } from "./season-courses.ts";
import type { EarlierLine, SeasonAsk, SeasonFacts } from "./season-facts.ts";
import { seasonLimits, type SeasonLimits } from "./season-limits.ts";
import { seasonMethods, storeOf, WORTH, type RefusedRecipe } from "./season-methods.ts";
import { onHand, type OnHand } from "./season-on-hand.ts";
import { LEAD_WEEKS, seasonWeeks, type SeasonWeeks } from "./season-weeks.ts";

export interface SeasonInstance {
  readonly ask: SeasonAsk;
  readonly weeks: SeasonWeeks;
  readonly courses: readonly SeasonCourse[];
  readonly limits: SeasonLimits;
  readonly refused: readonly RefusedRecipe[];
  readonly agreed: readonly AgreedLine[];
  /** All there is, in the usual course: what the plan and all that is agreed is held against. */
  readonly whole: Season;
  /** What is left to plan with, agreed lines taken off: in the usual course first. */
  readonly toPlan: readonly Season[];
  /** Limits that what is agreed breaks by itself. */
  readonly clashes: readonly string[];
  /** Targets and wishes that lie outside the weeks asked for. */
  readonly notes: readonly string[];
  readonly names: ReadonlyMap<string, string>;
}

/** Weeks for which the plan before this one is held to, as far as it costs little. */
const HELD_WEEKS = 4;
/** Taste is a matter of months. */
const TASTE_WEEKS = 4;

export function seasonInstance(facts: SeasonFacts, ask: SeasonAsk, earlier: readonly EarlierLine[] = []): SeasonInstance {
  const garden = asKnown(facts.garden);
  const weeks = seasonWeeks(ask.from, ask.weeks, garden.asOf, facts.settings);
  const reckoning = reckonGarden(garden, { ...facts.kitchen, planLines: [] }, { from: weeks.weeks[LEAD_WEEKS] as IsoWeek, weeks: weeks.weeks.length - LEAD_WEEKS });
  const lots = lotsToday(facts.larder);
  const stock = onHand(lots, reckoning, weeks, garden.asOf);
  const limits = seasonLimits(facts, weeks, lots);
  const found = seasonCourses(reckoning.crops, reckoning.span.lead, reckoning.span.weeks.length);
  const crops = found.map((course) => seasonCrops(facts, reckoning, course, stock, weeks));
  const ripe = new Set((crops[0] ?? []).filter((crop) => crops.some((of) => ripens(of.find(({ crop: slug }) => slug === crop.crop), weeks))).map(({ crop }) => crop));
  const { methods, refused } = seasonMethods(facts, { ripe, inStore: inStoreOf(lots, facts), eatPortions: limits.eatOneDishPortions, weeks: weeks.weeks.length - weeks.first });
  const asked = askedFor(facts, weeks, new Set(methods.map(({ id }) => id)));
  const base: Season = {
    firstWeek: weeks.weeks[0] as IsoWeek,
    weeks: weeks.weeks.length,
    scenarios: [{ id: found[0]?.id ?? "usual", chance: 1 }],
    crops: crops[0] ?? [],
    resources: withStock(limits, methods),
    equipment: [],
    methods,
    eatFromStorePortions: limits.eatFromStorePortions,
    targets: asked.targets,
    wishes: asked.wishes,
    tastes: tastesOf(facts, methods.filter(({ sessionBatches }) => sessionBatches.max > 0).map(({ id }) => id)),
    ...held(earlier, weeks, methods.filter(({ sessionBatches }) => sessionBatches.max > 0).map(({ id }) => id)),
    frozenWeeks: 0,
  };
  const agreed = agreedLines(facts, weeks);
  const inCourse = found.map((course, i) => lessAgreed({ ...base, scenarios: [{ id: course.id, chance: 1 }], crops: crops[i] ?? [] }, agreed));
  const names = new Map([...garden.crops].map(([slug, crop]) => [slug, crop.name]));
  return { ask, weeks, courses: found, limits, refused, agreed, whole: base, toPlan: inCourse.map(({ season }) => season), clashes: inCourse[0]?.clashes ?? [], notes: [...limits.notes, ...asked.notes], names };
}

/** Grams of a crop in one course, by week of the season; before the running week only what is on hand from then. */
function seasonCrops(facts: SeasonFacts, { crops, span }: GardenReckoning, { scenario }: SeasonCourse, stock: OnHand, weeks: SeasonWeeks): SeasonCrop[] {
  const bySlug = new Map(crops.map((outlook) => [outlook.crop.slug, outlook]));
  const slugs = [...new Set([...bySlug.keys(), ...stock.keys()])].sort();
  return slugs.flatMap((slug): SeasonCrop[] => {
    const crop = facts.garden.crops.get(slug);
    if (!crop) return [];
    const outlook = bySlug.get(slug);
    const waits = waitsForTheGrower(crop);
    const onHandGrams = stock.get(slug);
    const harvest = weeks.weeks.map((_, t) => Math.round((onHandGrams?.[t] ?? 0) + (t < weeks.running || !outlook ? 0 : comingGrams(outlook, scenario, t - weeks.running + span.lead, t === weeks.running))));
    const eats = facts.settings.avoids.crops.includes(slug) ? 0 : (facts.kitchen.eats.get(slug) ?? 0);
    const gives = facts.recipes.find((recipe) => recipe.way === "give" && recipe.uses.length === 1 && recipe.uses[0]?.crop === slug)?.uses[0]?.grams ?? 0;
    const fromToday = (grams: number) => weeks.atHome.map((share, t) => (t < weeks.running ? 0 : Math.round(grams * share)));
    // what waits on the stem is not lost by waiting
    return [{ crop: slug, keepWeeks: waits ? weeks.weeks.length : keepWeeksOf(crop, waits), freshGrams: fromToday(eats), giveGrams: fromToday(gives).map((grams, t) => (t < weeks.first ? 0 : grams)), harvestGrams: [harvest] }];
  });
}

/** What is still to come of a week; what was picked in the running week is on hand or gone. */
function comingGrams(outlook: CropOutlook, scenario: number, w: number, running: boolean): number {
  const grams = (outlook.kept.scenarios[scenario] as Float64Array)[w] ?? 0;
  return Math.max(0, running ? grams - (outlook.pickedGrams[w] ?? 0) : grams);
}

const ripens = (crop: SeasonCrop | undefined, weeks: SeasonWeeks): boolean => (crop?.harvestGrams[0] ?? []).some((grams, t) => grams > 0 && t + (crop?.keepWeeks ?? 1) > weeks.first);

function inStoreOf(lots: readonly LotToday[], facts: SeasonFacts): Map<string, number> {
  return lots.length === 0 ? new Map<string, number>() : portionsInStore(facts.larder);
}

/** The freezer's room for what is planned: all of it, less what stands there and is not a dish of the plan. */
function withStock({ resources, freezerUsed }: SeasonLimits, methods: Season["methods"]): Resource[] {
  const modelled = methods.reduce((sum, { opening, portions, perBatch }) => sum + (opening / portions) * (perBatch["freezer"] ?? 0), 0);
  const other = Math.max(0, freezerUsed - modelled);
  return resources.map((one) => (one.id === "freezer" ? { ...one, amount: one.amount.map((litres) => Math.max(modelled, litres - other)) } : one));
}

interface Asked {
  readonly targets: readonly Target[];
  readonly wishes: readonly Wish[];
  readonly notes: readonly string[];
}

function askedFor({ targets, wishes, recipes, garden }: SeasonFacts, weeks: SeasonWeeks, methods: ReadonlySet<string>): Asked {
  const notes: string[] = [];
  const title = (id: string): string => recipes.find((recipe) => recipe.id === id)?.title ?? "a recipe that is gone";
  const indexOf = (day: LocalDate): number => Math.floor((dayNumber(weekStart(weekOf(day))) - dayNumber(weekStart(weeks.weeks[0] as IsoWeek))) / 7);
  const of = (recipeId: string): string[] => [recipeId, storeOf(recipeId)].filter((id) => methods.has(id));
  const wanted = targets.flatMap(({ id, recipeId, portions, by }): Target[] => {
    const at = indexOf(by);
    if (at < weeks.first) notes.push(`${title(recipeId)} by ${dayWords(by, yearOf(garden.asOf))} lies before these weeks and is not planned for.`);
    else if (of(recipeId).length === 0) notes.push(`Nothing for ${title(recipeId)} ripens or is in store in these weeks.`);
    else return [{ id, methods: of(recipeId), portions, atWeek: Math.min(at, weeks.weeks.length - 1) }];
    return [];
  });
  const open = wishes.flatMap(({ id, recipeId, portions, from, by }): Wish[] => {
    const [first, until] = [Math.max(weeks.first, from === null ? 0 : indexOf(from)), Math.min(weeks.weeks.length, by === null ? Infinity : indexOf(by) + 1)];
    return until > first && methods.has(recipeId) ? [{ id, methods: [recipeId], portions, from: first, until }] : [];
  });
  return { targets: wanted, wishes: open, notes };
}

function tastesOf({ tastes, kitchen }: SeasonFacts, methods: readonly string[]): Taste[] {
  return methods.flatMap((id): Taste[] => {
    const liking = tastes.get(id) ?? "fine";
    if (liking === "never" || liking === "tired") return [];
    const [first, next] = WORTH[liking];
    return [{ id, methods: [id], everyWeeks: TASTE_WEEKS, tiers: [{ portions: kitchen.people * 4, worth: first }, { portions: kitchen.people * 8, worth: next }] }];
  });
}

/** Lines of the plan before, in the weeks soon to come: changing them counts, after loss and what was asked for. */
function held(earlier: readonly EarlierLine[], weeks: SeasonWeeks, methods: readonly string[]): Pick<Season, "agreed" | "agreedUntil"> {
  const until = Math.min(weeks.weeks.length, weeks.first + HELD_WEEKS);
  const agreed = earlier.flatMap(({ week, recipeId, batches }): Batches[] => {
    const t = weeks.weeks.indexOf(week);
    return t >= weeks.first && t < until && methods.includes(recipeId) ? [{ method: recipeId, week: t, batches }] : [];
  });
  return { agreed, agreedUntil: agreed.length > 0 ? until : 0 };
}
