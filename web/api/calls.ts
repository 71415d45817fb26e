/** The calls of the service by name. Paths and shapes live here; pages know only things. The contract of an answer is named, and fetched when it is needed (contracts.ts). */
import type { NewBed } from "#shared/contracts/beds.ts";
import type { NewCookDay } from "#shared/contracts/cook-days.ts";
import type { NewHousehold, Household } from "#shared/contracts/household.ts";
import type { KeepingQuery } from "#shared/contracts/keeping.ts";
import type { NewLot, NewMovement } from "#shared/contracts/lots.ts";
import type { NewPick } from "#shared/contracts/picks.ts";
import type { NewPlanLine } from "#shared/contracts/plan-lines.ts";
import type { NewPlace } from "#shared/contracts/places.ts";
import type { RecipeToRead } from "#shared/contracts/recipe-reading.ts";
import type { NewRecipe } from "#shared/contracts/recipes.ts";
import type { ScaleAsked } from "#shared/contracts/scaling.ts";
import type { NewAgreed, SeasonQuestion } from "#shared/contracts/season-plan.ts";
import type { NewSighting } from "#shared/contracts/sightings.ts";
import type { NewSowing } from "#shared/contracts/sowings.ts";
import type { NewStockTarget } from "#shared/contracts/stock-targets.ts";
import type { NewSupply } from "#shared/contracts/supplies.ts";
import type { NewTaste } from "#shared/contracts/tastes.ts";
import type { Normals } from "#shared/contracts/weather.ts";
import type { NewWish } from "#shared/contracts/wishes.ts";
import { units } from "../units.ts";
import { post, put, putText, read, remove } from "./client.ts";

const query = (names: Readonly<Record<string, string | number | undefined>>): string => {
  const given = new URLSearchParams();
  for (const [name, value] of Object.entries(names)) if (value !== undefined) given.set(name, String(value));
  const text = given.toString();
  return text === "" ? "" : `?${text}`;
};

export const health = (signal?: AbortSignal) => read("Health", "/api/health", signal);
export const crops = (signal?: AbortSignal) => read("Crops", "/api/crops", signal);
export const today = (signal?: AbortSignal) => read("Today", "/api/today", signal);
/** Without a beginning: the year that today's week belongs to. */
export const calendar = (of: { readonly from?: string; readonly weeks?: number }, signal?: AbortSignal) => read("Calendar", `/api/calendar${query(of)}`, signal);

/** Whoever reads the household or changes it also sets the units that all pages write in. */
const inItsUnits = (answer: Household): Household => {
  units.value = answer.units;
  return answer;
};
export const household = async (signal?: AbortSignal) => inItsUnits(await read("Household", "/api/household", signal));
/** Deletes everything of the household and starts it afresh. */
export const removeHousehold = () => remove("/api/household");
export const putHousehold = async (body: NewHousehold) => inItsUnits(await put("Household", "/api/household", body));

export const beds = (signal?: AbortSignal) => read("Beds", "/api/beds", signal);
/** One thing read by itself is read with its version, so that it can be changed afterwards. */
export const bed = (id: string, signal?: AbortSignal) => read("Bed", `/api/beds/${id}`, signal);
export const putBed = (id: string, body: NewBed) => put("Bed", `/api/beds/${id}`, body);
export const removeBed = (id: string) => remove(`/api/beds/${id}`);

export const sowings = (signal?: AbortSignal) => read("Sowings", "/api/sowings", signal);
export const sowing = (id: string, signal?: AbortSignal) => read("Sowing", `/api/sowings/${id}`, signal);
export const putSowing = (id: string, body: NewSowing) => put("Sowing", `/api/sowings/${id}`, body);
export const removeSowing = (id: string) => remove(`/api/sowings/${id}`);
export const previewSowing = (body: NewSowing, signal?: AbortSignal) => post("SowingPreview", "/api/sowings/preview", body, signal);
export const putSighting = (sowingId: string, id: string, body: NewSighting) => put("Sighting", `/api/sowings/${sowingId}/sightings/${id}`, body);
export const removeSighting = (sowingId: string, id: string) => remove(`/api/sowings/${sowingId}/sightings/${id}`);

/** When to sow a crop, and how much, for weeks in a row in which it is wanted. */
export const sowingAdvice = (of: { readonly crop: string; readonly from: string; readonly weeks: number; readonly gramsPerWeek: number; readonly cover?: string }, signal?: AbortSignal) => read("SowingAdvice", `/api/sowing-advice${query(of)}`, signal);
/** What still makes sense to sow in a bed today. */
export const bedAdvice = (bedId: string, signal?: AbortSignal) => read("BedAdvice", `/api/beds/${bedId}/advice`, signal);
export const trackRecord = (signal?: AbortSignal) => read("TrackRecord", "/api/track-record", signal);

export const picks = (of: { readonly from?: string; readonly until?: string; readonly sowingId?: string }, signal?: AbortSignal) => read("Picks", `/api/picks${query(of)}`, signal);
export const putPick = (id: string, body: NewPick) => put("Pick", `/api/picks/${id}`, body);
export const removePick = (id: string) => remove(`/api/picks/${id}`);

export const putPlanLine = (id: string, body: NewPlanLine) => put("PlanLine", `/api/plan-lines/${id}`, body);
export const removePlanLine = (id: string) => remove(`/api/plan-lines/${id}`);

export const recipes = (of: { readonly crop?: string; readonly way?: string } = {}, signal?: AbortSignal) => read("Recipes", `/api/recipes${query(of)}`, signal);
/** As much of each as a list shows. */
export const recipeBriefs = (signal?: AbortSignal) => read("RecipeBriefs", "/api/recipes/brief", signal);
export const recipe = (id: string, signal?: AbortSignal) => read("Recipe", `/api/recipes/${id}`, signal);
export const putRecipe = (id: string, body: NewRecipe) => put("Recipe", `/api/recipes/${id}`, body);
export const removeRecipe = (id: string) => remove(`/api/recipes/${id}`);

/** Reads a pasted recipe into a draft; stores nothing. */
export const readRecipeText = (body: RecipeToRead, signal?: AbortSignal) => post("RecipeDraft", "/api/recipes/read", body, signal);
export const scaledRecipe = (id: string, body: ScaleAsked, signal?: AbortSignal) => post("Scaled", `/api/recipes/${id}/scaled`, body, signal);

export const keeping = (of: KeepingQuery, signal?: AbortSignal) => read("KeepingAnswer", `/api/keeping${query(of)}`, signal);
export const keepingFoods = (signal?: AbortSignal) => read("KeepingFoods", "/api/keeping/foods", signal);

export const larder = (signal?: AbortSignal) => read("Larder", "/api/larder", signal);
/** From which lots so much is taken, oldest first; nothing is stored. */
export const oldestFirst = (of: { readonly crop?: string; readonly recipeId?: string; readonly portions?: number; readonly grams?: number }, signal?: AbortSignal) => read("OldestFirst", `/api/larder/oldest-first${query(of)}`, signal);
export const places = (signal?: AbortSignal) => read("Places", "/api/places", signal);
export const putPlace = (id: string, body: NewPlace) => put("Place", `/api/places/${id}`, body);
export const lot = (id: string, signal?: AbortSignal) => read("Lot", `/api/lots/${id}`, signal);
export const putLot = (id: string, body: NewLot) => put("Lot", `/api/lots/${id}`, body);
export const removeLot = (id: string) => remove(`/api/lots/${id}`);
export const putMovement = (lotId: string, id: string, body: NewMovement) => put("MovementOfLot", `/api/lots/${lotId}/movements/${id}`, body);
export const removeMovement = (lotId: string, id: string) => remove(`/api/lots/${lotId}/movements/${id}`);
export const gramAccount = (of: { readonly season?: number } = {}, signal?: AbortSignal) => read("GramAccount", `/api/gram-account${query(of)}`, signal);

export const place = (id: string, signal?: AbortSignal) => read("Place", `/api/places/${id}`, signal);
export const removePlace = (id: string) => remove(`/api/places/${id}`);

export const supplies = (signal?: AbortSignal) => read("Supplies", "/api/supplies", signal);
export const supply = (id: string, signal?: AbortSignal) => read("Supply", `/api/supplies/${id}`, signal);
export const putSupply = (id: string, body: NewSupply) => put("Supply", `/api/supplies/${id}`, body);
export const removeSupply = (id: string) => remove(`/api/supplies/${id}`);
export const shopping = (of: { readonly week?: string; readonly by?: string } = {}, signal?: AbortSignal) => read("Shopping", `/api/shopping${query(of)}`, signal);
/** What comes out of the freezer tonight. */
export const takeOut = (signal?: AbortSignal) => read("TakeOut", "/api/take-out", signal);

export const stockTargets = (signal?: AbortSignal) => read("StockTargets", "/api/stock-targets", signal);
export const stockTarget = (id: string, signal?: AbortSignal) => read("StockTarget", `/api/stock-targets/${id}`, signal);
export const putStockTarget = (id: string, body: NewStockTarget) => put("StockTarget", `/api/stock-targets/${id}`, body);
export const removeStockTarget = (id: string) => remove(`/api/stock-targets/${id}`);
export const suggestedTargets = (signal?: AbortSignal) => read("SuggestedTargets", "/api/stock-targets/suggested", signal);
export const wishes = (signal?: AbortSignal) => read("Wishes", "/api/wishes", signal);
export const putWish = (id: string, body: NewWish) => put("Wish", `/api/wishes/${id}`, body);
export const removeWish = (id: string) => remove(`/api/wishes/${id}`);
export const tastes = (signal?: AbortSignal) => read("Tastes", "/api/tastes", signal);
export const putTaste = (recipeId: string, body: NewTaste) => put("Taste", `/api/tastes/${recipeId}`, body);
/** Nobody has said any more. */
export const removeTaste = (recipeId: string) => remove(`/api/tastes/${recipeId}`);

/** The last plan of the season that was worked out; never waits for one. */
export const seasonPlan = (signal?: AbortSignal) => read("StandingSeason", "/api/season/plan", signal);
/** Begins to plan anew in the background; the answer has the simple rule's plan at once. */
export const planSeason = (body: SeasonQuestion, signal?: AbortSignal) => post("SeasonJob", "/api/season/plan", body, signal, { prefer: "respond-async" });
export const seasonJob = (id: string, signal?: AbortSignal) => read("SeasonJob", `/api/season/jobs/${id}`, signal);
export const cancelSeasonJob = (id: string) => remove(`/api/season/jobs/${id}`);
export const agreed = (week: string, signal?: AbortSignal) => read("AgreedWeek", `/api/season/weeks/${week}/agreed`, signal);
/** Reserves produce, litres and jars for the lines, all or none. */
export const agreeWeek = (week: string, body: NewAgreed) => put("AgreedWeek", `/api/season/weeks/${week}/agreed`, body);
export const unagreeWeek = (week: string) => remove(`/api/season/weeks/${week}/agreed`);

export const cookDays = (signal?: AbortSignal) => read("CookDays", "/api/cook-days", signal);
export const cookDay = (id: string, signal?: AbortSignal) => read("CookDay", `/api/cook-days/${id}`, signal);
export const putCookDay = (id: string, body: NewCookDay) => put("CookDay", `/api/cook-days/${id}`, body);
export const removeCookDay = (id: string) => remove(`/api/cook-days/${id}`);
export const timetable = (id: string, signal?: AbortSignal) => post("Timetable", `/api/cook-days/${id}/timetable`, {}, signal);

export const weather = (signal?: AbortSignal) => read("WeatherHeld", "/api/weather", signal);
export const putNormals = (body: Normals) => put("Normals", "/api/weather/normals", body);
/** Columns date, tmax_c, tmin_c by name; all rows or none. */
export const putWeatherDays = (csv: string) => putText("DaysStored", "/api/weather/days", "text/csv", csv);
