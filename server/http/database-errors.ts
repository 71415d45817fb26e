/**
 * What PostgreSQL refuses, by the classes of its manual's appendix "PostgreSQL Error Codes". Verbs check before they write, so most of these are
 * two requests that met: the constraint is the last guard and its name says which field lost.
 */
import type { Problem } from "#shared/kernel/outcome.ts";

interface DatabaseError {
  readonly code: string;
  readonly constraint?: string;
}

const GONE = (path: string, what: string): Problem => ({
  code: "conflict",
  detail: `The ${what} was removed meanwhile, or is still in use. Load again and try once more.`,
  fields: [{ path, message: `the ${what} was removed meanwhile, or is still in use` }],
});

const BY_CONSTRAINT: Readonly<Record<string, Problem>> = {
  sowings_bed_fk: GONE("bedId", "bed"),
  sowings_crop_fk: GONE("crop", "crop"),
  sightings_sowing_fk: GONE("id", "sowing"),
  picks_sowing_fk: GONE("sowingId", "sowing"),
  plan_lines_recipe_fk: GONE("recipeId", "recipe"),
  recipe_parts_part_fk: GONE("ingredients", "recipe"),
  cook_day_dishes_recipe_fk: GONE("dishes", "recipe"),
  lots_place_fk: GONE("placeId", "place"),
  lots_recipe_fk: GONE("recipeId", "recipe"),
  lots_crop_fk: GONE("crop", "crop"),
  movements_lot_fk: GONE("id", "lot"),
  movements_place_fk: GONE("placeId", "place"),
  movements_to_place_fk: GONE("toPlaceId", "place"),
  wishes_recipe_fk: GONE("recipeId", "recipe"),
  stock_targets_recipe_fk: GONE("recipeId", "recipe"),
};

const AWAY: Problem = { code: "unavailable", detail: "The database does not answer just now. Nothing was changed; try again in a moment." };
const BUSY: Problem = { code: "unavailable", detail: "Two changes met and this one gave way. Nothing was changed; try again." };
const OUT_OF_RANGE: Problem = { code: "bad-request", detail: "A value in the request lies outside what can be kept." };
const FULL: Problem = { code: "unavailable", detail: "There is no room left to store anything. Nothing was changed." };

const NO_CONNECTION = new Set(["ECONNREFUSED", "ECONNRESET", "EPIPE", "ENOENT", "ETIMEDOUT"]);

/** The problem behind an error of the database, through the wrapper that drizzle puts around it; null for any other. */
export function databaseProblem(error: unknown): Problem | null {
  const found = databaseError(error);
  if (!found) return error instanceof Error && /timeout exceeded when trying to connect|Connection terminated/.test(error.message) ? AWAY : null;
  if (found.constraint !== undefined && BY_CONSTRAINT[found.constraint]) return BY_CONSTRAINT[found.constraint] ?? null;
  if (NO_CONNECTION.has(found.code)) return AWAY;
  switch (found.code.slice(0, 2)) {
    case "08":
    case "57":
      return AWAY;
    case "40":
      return BUSY;
    case "53":
      return FULL;
    case "22":
      return OUT_OF_RANGE;
    default:
      return null;
  }
}

function databaseError(error: unknown): DatabaseError | null {
  for (let at = error, depth = 0; at instanceof Error && depth < 4; at = at.cause, depth++) {
    if ("code" in at && typeof at.code === "string" && (/^[0-9A-Z]{5}$/.test(at.code) || NO_CONNECTION.has(at.code)))
      return "constraint" in at && typeof at.constraint === "string" ? { code: at.code, constraint: at.constraint } : { code: at.code };
    if (/timeout exceeded when trying to connect|Connection terminated/.test(at.message)) return { code: "08000" };
  }
  return null;
}
