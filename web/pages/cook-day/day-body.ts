/** A stored cook day as the body that would store it again. Pure. */
import type { CookDay, NewCookDay } from "#shared/contracts/cook-days.ts";

export function bodyOf(day: CookDay): NewCookDay {
  return {
    on: day.on,
    startsAt: day.startsAt,
    cooks: day.cooks,
    kitchen: day.kitchen,
    dishes: day.dishes.map(({ recipeId, batches }) => ({ recipeId, batches })),
    ...(day.endsBy === undefined ? {} : { endsBy: day.endsBy }),
    ...(day.unavailable.length > 0 ? { unavailable: day.unavailable } : {}),
    ...(day.title === undefined ? {} : { title: day.title }),
  };
}

/** With one batch more of a dish, which comes in where it is not there yet. */
export function withDish(body: NewCookDay, recipeId: string): NewCookDay {
  const there = body.dishes.some((dish) => dish.recipeId === recipeId);
  const dishes = there ? body.dishes.map((dish) => (dish.recipeId === recipeId ? { ...dish, batches: dish.batches + 1 } : dish)) : [...body.dishes, { recipeId, batches: 1 }];
  return { ...body, dishes };
}
