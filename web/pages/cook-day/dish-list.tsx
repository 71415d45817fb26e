/** The dishes of the day by letter: more or fewer batches, out, and one more in. */
import { useState } from "preact/hooks";
import type { CookDay, NewCookDay, Timetable } from "#shared/contracts/cook-days.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { amount, count, listed, lower, made } from "../../format.ts";
import { cookable } from "./day-words.ts";

interface DishListProps {
  readonly day: CookDay;
  readonly plan: Timetable;
  readonly all: readonly Recipe[];
  readonly onChange: (dishes: NewCookDay["dishes"]) => Promise<void>;
}

export function DishList({ day, plan, all, onChange }: DishListProps) {
  const [adding, setAdding] = useState("");
  const left = cookable(all).filter((recipe) => !day.dishes.some((dish) => dish.recipeId === recipe.id));
  const change = (recipeId: string, by: number): void => void onChange(day.dishes.map((dish) => (dish.recipeId === recipeId ? { recipeId, batches: dish.batches + by } : dish)));
  const add = async (): Promise<void> => {
    if (adding === "") return;
    await onChange([...day.dishes, { recipeId: adding, batches: 1 }]);
    setAdding("");
  };
  return (
    <section class="sec" aria-labelledby="dishes-h">
      <h2 id="dishes-h">Dishes</h2>
      <ul class="rows dishes">
        {day.dishes.map((dish) => (
          <li key={dish.recipeId}>
            <span class="letter">{plan.dishes.find((one) => one.dish === dish.recipeId)?.letter}</span>
            <p>
              <a class="what" href={`/recipes/${dish.recipeId}`}>
                {dish.title}
              </a>
              <span class="quiet">{dishWords(dish.batches, all.find((recipe) => recipe.id === dish.recipeId))}</span>
            </p>
            <span class="acts no-print">
              <button type="button" class="btn word" onClick={() => change(dish.recipeId, 1)}>
                More<span class="vh"> of {dish.title}</span>
              </button>
              {dish.batches > 1 && (
                <button type="button" class="btn word" onClick={() => change(dish.recipeId, -1)}>
                  Fewer<span class="vh"> of {dish.title}</span>
                </button>
              )}
              <button type="button" class="btn word" onClick={() => void onChange(day.dishes.filter((one) => one.recipeId !== dish.recipeId))}>
                Out<span class="vh">: {dish.title}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
      <div class="add-dish no-print">
        <div>
          <label for="add-dish">One more dish</label>
          <select class="field" id="add-dish" value={adding} onChange={(event) => setAdding(event.currentTarget.value)}>
            <option value="">choose a recipe</option>
            {left.map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </div>
        <button type="button" class="btn" onClick={() => void add()}>
          Put it in
        </button>
      </div>
    </section>
  );
}

/** "2 batches; 2.4 kg courgettes make 12 portions." */
function dishWords(batches: number, recipe: Recipe | undefined): string {
  if (!recipe) return count(batches, "batch", "batches");
  const makes = made({ amount: recipe.makes.amount * batches, unit: recipe.makes.unit });
  const uses = listed(recipe.uses.map(({ crop, grams }) => `${amount(grams * batches)} ${lower(crop.replaceAll("-", " "))}`));
  return `${batches > 1 ? `${count(batches, "batch", "batches")}; ` : ""}${uses ? `takes ${uses}, ` : ""}makes ${makes}`;
}
