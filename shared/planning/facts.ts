/**
 * What the service loads and planning reads: stored facts and reference rows as plain readonly data, nothing computed.
 * Facts dated after `asOf` may be handed in; planning leaves them out itself, by the date of the fact.
 */
import type { CropFacts } from "../kernel/crop-facts.ts";
import type { IsoWeek } from "../kernel/iso-week.ts";
import type { LocalDate } from "../kernel/local-date.ts";
import type { Hold, Limit, RecipeStep, RecipeUse } from "../kernel/recipe.ts";
import type { Cover } from "../kernel/way.ts";
import type { DailyRecord, MonthlyNormal, Planting } from "../engines/harvest-forecast/index.ts";
import type { ForecastMemory } from "./forecast-memory.ts";
import type { PreservationTables } from "../engines/preservation/index.ts";

/** Weeks in a row; a year of them for the calendar. */
export interface Window {
  readonly from: IsoWeek;
  readonly weeks: number;
}

export interface BedFacts {
  readonly id: string;
  readonly name: string;
  readonly lengthM: number;
  readonly widthM: number;
  readonly cover: Cover;
}

/** One sowing or standing plant of the household, with all its sightings and picks (undone picks are no picks). */
export interface GardenPlanting extends Planting {
  readonly bedId: string;
  readonly bedName: string;
  readonly variety: string | null;
}

export interface GardenFacts {
  readonly asOf: LocalDate;
  /** False until somebody has said where the garden lies. */
  readonly placed: boolean;
  /** Degrees north; below zero is south of the equator, where the tables' days move by six months. */
  readonly latitude: number;
  /** Daily maxima and minima the household has, null without any. */
  readonly record: DailyRecord | null;
  readonly normals: readonly MonthlyNormal[] | null;
  /** Whose weather it is, as the publisher wants to be named. */
  readonly weatherAttribution: string | null;
  /** Seed of the generated years where there is no record; `seedOf(householdId)` gives a household the same years every time. */
  readonly seed: number;
  /** By slug. */
  readonly crops: ReadonlyMap<string, CropFacts>;
  readonly beds: readonly BedFacts[];
  readonly plantings: readonly GardenPlanting[];
  /** Forecasts of this record, normals, seed and book that were made before; left out = all are reckoned anew. */
  readonly memory?: ForecastMemory;
}

/** A way chosen for a week. */
export interface PlanLineFacts {
  readonly id: string;
  readonly week: IsoWeek;
  readonly recipeId: string;
  readonly batches: number;
}

/** A cook day still to come, as Today names it. */
export interface UpcomingCookDay {
  readonly id: string;
  readonly on: LocalDate;
  /** Local HH:MM. */
  readonly startsAt: string;
  readonly title: string | null;
  readonly dishes: readonly { readonly recipeId: string; readonly batches: number }[];
}

export interface KitchenFacts {
  readonly people: number;
  readonly altitudeM: number;
  /** Grams of each crop the household eats fresh in a week of its season; the book's figures through `bookEats` where it has none of its own. */
  readonly eats: ReadonlyMap<string, number>;
  readonly eatsFrom: "household" | "book";
  /** More than this over in a week is a glut. */
  readonly glutGrams: number;
  readonly recipes: readonly RecipeUse[];
  /** Recipes somebody asked for; empty where wishes are not kept. */
  readonly askedFor: readonly string[];
  readonly planLines: readonly PlanLineFacts[];
  /** From asOf on, soonest first. */
  readonly cookDays: readonly UpcomingCookDay[];
  readonly preservation: PreservationTables;
}

/** A recipe that another takes something from; `inStore` says in words what there is of it in the larder on that day, oldest first. */
export interface Part {
  readonly id: string;
  readonly title: string;
  readonly inStore?: string;
}

/** A recipe with what the timetable needs of it. */
export interface CookableRecipe extends RecipeUse {
  readonly steps: readonly RecipeStep[];
  readonly holds: readonly Hold[];
  readonly limits: readonly Limit[];
  /** Of the words written in the recipe, so that cautions can be found by food. */
  readonly ingredientTexts: readonly string[];
  /** Recipes it takes something from (`madeBy` of its ingredients), each once; left out = none. */
  readonly parts?: readonly Part[];
}

/** A cook day as the household put it down. */
export interface CookDayFacts {
  readonly startsAt: string;
  readonly endsBy: string | null;
  readonly cooks: number;
  readonly kitchen: {
    readonly ovens: readonly { readonly trays: number; readonly preheatMin: number; readonly changeMin: number }[];
    readonly burners: number;
    readonly pots?: number | undefined;
    readonly sinks?: number | undefined;
    /** By the name that a step asks for. */
    readonly appliances?: readonly { readonly name: string; readonly count: number }[] | undefined;
    /** Hands-on minutes of washing up after each dish. */
    readonly washUpMin?: number | undefined;
  };
  readonly unavailable: readonly { readonly what: "cook"; readonly fromMin: number; readonly toMin: number; readonly why?: string | undefined }[];
  readonly dishes: readonly { readonly recipe: CookableRecipe; readonly batches: number }[];
}
