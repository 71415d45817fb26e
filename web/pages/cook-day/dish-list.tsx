/** The dishes of the day by letter: more or fewer batches, out, and one more in. */
import { useState } from "preact/hooks";
import type { CookDay, NewCookDay, Timetable } from "#shared/contracts/cook-days.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { useFocusLater } from "../../parts/focus-later.ts";
import { cookable, dishWords } from "./day-words.ts";

interface DishListProps {
  readonly day: CookDay;
  readonly plan: Timetable | null;
  readonly all: readonly Recipe[];
  readonly names: ReadonlyMap<string, string>;
  /** What is being done just now, in words. */
  readonly doing: string;
  readonly onChange: (dishes: NewCookDay["dishes"], doing: string) => void;
}

/** The contract takes no more. */
const MOST_BATCHES = 20;

export function DishList({ day, plan, all, names, doing, onChange }: DishListProps) {
  const [adding, setAdding] = useState("");
  const [missing, setMissing] = useState(false);
  const focusLater = useFocusLater();
  const dishes = day.dishes.map(({ recipeId, batches }) => ({ recipeId, batches }));
  const left = cookable(all).filter((recipe) => !day.dishes.some((dish) => dish.recipeId === recipe.id));
  const change = (recipeId: string, by: number): void => onChange(dishes.map((dish) => (dish.recipeId === recipeId ? { recipeId, batches: dish.batches + by } : dish)), "Planning again with the changed batches.");
  const takeOut = (recipeId: string): void => {
    focusLater("add-dish");
    onChange(dishes.filter((one) => one.recipeId !== recipeId), "Planning again without it.");
  };
  const add = (event: Event): void => {
    event.preventDefault();
    setMissing(adding === "");
    if (adding === "") return;
    onChange([...dishes, { recipeId: adding, batches: 1 }], "Planning again with it.");
    setAdding("");
  };
  return (
    <section class="sec" aria-labelledby="dishes-h">
      <h2 id="dishes-h">Dishes</h2>
      <ul class="rows dishes">
        {day.dishes.map(({ recipeId, title, batches }) => (
          <li key={recipeId}>
            <span class="letter">{plan?.dishes.find((one) => one.dish === recipeId)?.letter}</span>
            <p>
              <a class="what" href={`/recipes/${recipeId}`}>
                {title}
              </a>
              <span class="quiet">{dishWords(batches, all.find((recipe) => recipe.id === recipeId), names)}</span>
            </p>
            <span class="acts no-print">
              {batches < MOST_BATCHES && (
                <button type="button" class="btn word" id={`more-${recipeId}`} onClick={() => change(recipeId, 1)}>
                  More<span class="vh"> of {title}</span>
                </button>
              )}
              {batches > 1 && (
                <button
                  type="button"
                  class="btn word"
                  onClick={() => {
                    if (batches === 2) focusLater(`more-${recipeId}`);
                    change(recipeId, -1);
                  }}
                >
                  Fewer<span class="vh"> of {title}</span>
                </button>
              )}
              <button type="button" class="btn word" onClick={() => takeOut(recipeId)}>
                Take out<span class="vh">: {title}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
      <form class="add-dish no-print" onSubmit={add} noValidate>
        <div>
          <label for="add-dish">One more dish</label>
          <select class="field" id="add-dish" value={adding} aria-describedby="add-dish-say" aria-invalid={missing ? "true" : undefined} onChange={(event) => setAdding(event.currentTarget.value)}>
            <option value="">choose a recipe</option>
            {left.map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </div>
        <button type="submit" class="btn">
          Put it in
        </button>
        <p class={`say${missing ? " bad" : ""}`} id="add-dish-say" role="status">
          {missing ? "Choose a recipe first." : doing}
        </p>
      </form>
    </section>
  );
}
