/** The lines of what goes in: as written, with the garden's crop or the recipe that makes a part. */
import type { Crop } from "#shared/contracts/crops.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { FormField } from "../../parts/form-field.tsx";
import { emptyIngredient, type IngredientFields } from "./recipe-form.ts";

interface IngredientRowsProps {
  readonly rows: readonly IngredientFields[];
  readonly book: readonly Crop[];
  readonly all: readonly Recipe[];
  readonly onChange: (rows: IngredientFields[]) => void;
  readonly badOf: (field: string) => { readonly wrong: string } | null;
}

export function IngredientRows({ rows, book, all, onChange, badOf }: IngredientRowsProps) {
  const set = (index: number, change: Partial<IngredientFields>): void => onChange(rows.map((row, i) => (i === index ? { ...row, ...change } : row)));
  const own = all.filter((recipe) => recipe.way === "cook" || recipe.way === "freeze" || recipe.origin === "own");
  return (
    <section class="sec">
      <h2>Ingredients</h2>
      {rows.map((row, i) => (
        <div class="edit-row ingredient-row" key={i}>
          <FormField id={`ingredient-${i}`} label={`Ingredient ${i + 1}`} value={row.text} onInput={(text) => set(i, { text })} say="As you would write it: 1.2 kg courgettes, 2 tbsp oil." bad={badOf(`ingredient-${i}`)} />
          <div>
            <label for={`crop-${i}`}>From the garden</label>
            <select class="field" id={`crop-${i}`} value={row.crop} onChange={(event) => set(i, { crop: event.currentTarget.value })}>
              <option value="">no</option>
              {book.map(({ crop, name }) => (
                <option key={crop} value={crop}>
                  {name}
                </option>
              ))}
            </select>
          </div>
          <div>
            <label for={`part-${i}`}>Made by</label>
            <select class="field" id={`part-${i}`} value={row.madeBy} onChange={(event) => set(i, { madeBy: event.currentTarget.value })}>
              <option value="">no other recipe</option>
              {own.map(({ id, title }) => (
                <option key={id} value={id}>
                  {title}
                </option>
              ))}
            </select>
          </div>
          <button type="button" class="btn word" onClick={() => onChange(rows.filter((_, at) => at !== i))}>
            Remove<span class="vh"> ingredient {i + 1}</span>
          </button>
        </div>
      ))}
      <p class="acts">
        <button type="button" class="btn" onClick={() => onChange([...rows, emptyIngredient])}>
          Add an ingredient
        </button>
      </p>
    </section>
  );
}
