/** All recipes by way, narrowed to a crop or a way. */
import type { Crop } from "#shared/contracts/crops.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { WAYS } from "#shared/kernel/way.ts";
import { length, made, whole } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { setQuery } from "../../router.ts";
import { keepsWords, WAY_WORDS } from "./recipe-words.ts";

interface RecipeListProps {
  readonly all: readonly Recipe[];
  readonly book: readonly Crop[];
  readonly crop: string | null;
  readonly way: string | null;
}

export function RecipeList({ all, book, crop, way }: RecipeListProps) {
  const shown = all.filter((recipe) => (crop === null || recipe.uses.some((use) => use.crop === crop)) && (way === null || recipe.way === way));
  const used = book.filter((one) => all.some((recipe) => recipe.uses.some((use) => use.crop === one.crop)));
  const own = all.filter((recipe) => recipe.origin === "own").length;
  return (
    <>
      <Answer>
        {whole(all.length)} recipes and plain methods, {own === 0 ? "none of our own yet" : own === 1 ? "one of our own" : `${whole(own)} of our own`}.
      </Answer>
      <p class="acts">
        <a class="btn main" href="/recipes/new">
          Write a recipe
        </a>
      </p>
      <div class="narrow-by">
        <div>
          <label for="by-crop">With</label>
          <select class="field" id="by-crop" value={crop ?? ""} onChange={(event) => setQuery({ crop: event.currentTarget.value || null })}>
            <option value="">any crop</option>
            {used.map((one) => (
              <option key={one.crop} value={one.crop}>
                {one.name}
              </option>
            ))}
          </select>
        </div>
        <div>
          <label for="by-way">To</label>
          <select class="field" id="by-way" value={way ?? ""} onChange={(event) => setQuery({ way: event.currentTarget.value || null })}>
            <option value="">any way</option>
            {WAYS.map((one) => (
              <option key={one} value={one}>
                {WAY_WORDS[one]}
              </option>
            ))}
          </select>
        </div>
      </div>
      <p class="under" role="status">
        {shown.length === all.length ? "" : shown.length === 0 ? "Nothing fits. Choose another crop or way, or write one." : `${whole(shown.length)} of them.`}
      </p>
      {WAYS.map((one) => (
        <WayList key={one} way={one} recipes={shown.filter((recipe) => recipe.way === one)} />
      ))}
    </>
  );
}

function WayList({ way, recipes }: { readonly way: Recipe["way"]; readonly recipes: readonly Recipe[] }) {
  if (recipes.length === 0) return null;
  return (
    <section class="sec" aria-labelledby={`way-${way}`}>
      <h2 id={`way-${way}`}>{WAY_WORDS[way].charAt(0).toUpperCase() + WAY_WORDS[way].slice(1)}</h2>
      <ul class="rows recipe-rows">
        {recipes.map((recipe) => (
          <li key={recipe.id}>
            <a class="what" href={`/recipes/${recipe.id}`}>
              {recipe.title}
            </a>
            <span class="quiet">
              {[made(recipe.makes), recipe.handsOnMin > 0 ? `${length(recipe.handsOnMin)} of hands` : "", keepsWords(recipe.keeps), recipe.origin === "own" ? "our own" : ""].filter(Boolean).join(" · ")}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
