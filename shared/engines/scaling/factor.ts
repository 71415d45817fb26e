/**
 * Question: how many batches is what was asked for? A tested preserving recipe only in whole batches, each made by itself.
 * Source: National Center for Home Food Preservation, "Can I double the recipe?" (2025): home-canning recipes are not multiplied in one pot.
 */
import { ok, refuse, type Result } from "../../kernel/outcome.ts";
import { rational, type Rational } from "../../kernel/quantity.ts";
import { tinFactor } from "./tins.ts";
import type { Asked, Factor, RecipeToScale } from "./types.ts";

/** Less or more than this is no batch of a household kitchen. */
const LEAST = 1 / 100;
const MOST = 1_000;

export function factorOf(recipe: RecipeToScale, asked: Asked): Result<Factor> {
  const path = asked.batches !== undefined ? "batches" : asked.yield !== undefined ? "yield" : asked.dish !== undefined ? "dish" : "atHand.grams";
  const tested = recipe.process !== null;
  if (asked.atHand) {
    const use = recipe.uses.find(({ crop }) => crop === asked.atHand?.crop);
    if (!use) return no("atHand.crop", recipe.uses.length === 0 ? "this recipe weighs no crop" : `this recipe takes ${recipe.uses.map(({ crop }) => crop).join(", ")}`);
    const exact = asked.atHand.grams / use.grams;
    const batches = tested ? Math.floor(exact + 1e-9) : exact;
    if (batches < LEAST) return no(path, `is less than one batch takes, ${use.grams} g; a tested recipe is not made in parts: eat or freeze it instead`);
    return within(path, ratio(batches), tested, tested ? asked.atHand.grams - batches * use.grams : null);
  }
  if (asked.dish) {
    if (tested) return no(path, "a tested preserving recipe is made in its own jars, not in another dish");
    return within(path, ratio(tinFactor(asked.dish.from, asked.dish.to)), false, null);
  }
  const wanted = asked.batches ?? (asked.yield as number) / recipe.makes.amount;
  const whole = Math.round(wanted);
  if (tested && (Math.abs(wanted - whole) > 1e-9 || whole < 1)) {
    const near = [Math.max(1, Math.floor(wanted)), Math.max(1, Math.floor(wanted)) + 1].map((batches) => (path === "yield" ? batches * recipe.makes.amount : batches));
    return no(path, `must come to whole batches, as the process was tested for exactly this recipe: ${near.join(" or ")} would work`);
  }
  return within(path, ratio(wanted), tested, null);
}

function within(path: string, factor: Rational, apart: boolean, leftGrams: number | null): Result<Factor> {
  const value = factor.n / factor.d;
  return value < LEAST || value > MOST ? no(path, `comes to ${Math.round(value * 1000) / 1000} batches; from ${LEAST} to ${MOST} would work`) : ok({ factor, apart, leftGrams });
}

const no = (path: string, message: string) => refuse("bad-request", "The recipe cannot be made in that amount.", [{ path, message }]);

/** Thirds and the like stay exact; what comes from areas is kept to six decimals. */
function ratio(value: number): Rational {
  for (const below of [1, 2, 3, 4, 6, 8, 12]) if (Math.abs(value * below - Math.round(value * below)) < 1e-9) return rational(Math.round(value * below), below);
  return rational(Math.round(value * 1_000_000), 1_000_000);
}
