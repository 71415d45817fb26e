/** The lines of what goes in: as written, and where it comes from: the garden, another recipe, the shop. */
import type { Crop } from "#shared/contracts/crops.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { FormField } from "../../parts/form-field.tsx";
import { useFocusLater } from "../../parts/focus-later.ts";
import { emptyIngredient, type IngredientFields } from "./recipe-form.ts";

interface IngredientRowsProps {
  readonly rows: readonly IngredientFields[];
  readonly book: readonly Crop[];
  /** Recipes that may be a part of this one. */
  readonly parts: readonly Recipe[];
  readonly onChange: (rows: IngredientFields[]) => void;
  readonly badOf: (field: string) => { readonly wrong: string } | null;
  readonly sayOf: (field: string) => string | undefined;
}

export function IngredientRows({ rows, book, parts, onChange, badOf, sayOf }: IngredientRowsProps) {
  const focusLater = useFocusLater();
  const set = (index: number, change: Partial<IngredientFields>): void => onChange(rows.map((row, i) => (i === index ? { ...row, ...change } : row)));
  return (
    <section class="sec" aria-labelledby="ingredients-h">
      <h2 id="ingredients-h">Ingredients</h2>
      <p class="under">One line each, as you would write it: 1.2 kg courgettes, 2 tbsp oil, salt to taste.</p>
      {rows.map((row, i) => (
        <div class="edit-row ingredient-row" key={i}>
          <FormField id={`ingredient-${i}`} label={`Ingredient ${i + 1}`} value={row.text} onInput={(text) => set(i, { text })} say={sayOf(`ingredient-${i}`)} bad={badOf(`ingredient-${i}`)} />
          <ComesFrom id={`comes-${i}`} row={row} book={book} parts={parts} onChoose={(chosen) => set(i, chosen)} bad={badOf(`comes-${i}`)} />
          <button
            type="button"
            class="btn word"
            onClick={() => {
              focusLater(`ingredient-${Math.min(i, rows.length - 2)}`, "add-ingredient");
              onChange(rows.filter((_, at) => at !== i));
            }}
          >
            Remove<span class="vh"> ingredient {i + 1}</span>
          </button>
        </div>
      ))}
      <p class="acts">
        <button
          type="button"
          class="btn"
          id="add-ingredient"
          onClick={() => {
            focusLater(`ingredient-${rows.length}`);
            onChange([...rows, emptyIngredient]);
          }}
        >
          Add an ingredient
        </button>
      </p>
    </section>
  );
}

interface ComesFromProps {
  readonly id: string;
  readonly row: IngredientFields;
  readonly book: readonly Crop[];
  readonly parts: readonly Recipe[];
  readonly onChoose: (chosen: Pick<IngredientFields, "crop" | "madeBy">) => void;
  readonly bad: { readonly wrong: string } | null;
}

const CROP = "crop:";
const PART = "part:";

function ComesFrom({ id, row, book, parts, onChoose, bad }: ComesFromProps) {
  const choose = (value: string): void => onChoose({ crop: value.startsWith(CROP) ? value.slice(CROP.length) : "", madeBy: value.startsWith(PART) ? value.slice(PART.length) : "" });
  return (
    <div class="form-field">
      <label for={id}>Comes from</label>
      <select
        class="field"
        id={id}
        value={row.crop ? CROP + row.crop : row.madeBy ? PART + row.madeBy : ""}
        aria-invalid={bad ? "true" : undefined}
        aria-describedby={bad ? `${id}-say` : undefined}
        onChange={(event) => choose(event.currentTarget.value)}
      >
        <option value="">the shop or the shelf</option>
        <optgroup label="The garden">
          {book.map(({ crop, name }) => (
            <option key={crop} value={CROP + crop}>
              {name}
            </option>
          ))}
        </optgroup>
        <optgroup label="Another recipe">
          {parts.map((part) => (
            <option key={part.id} value={PART + part.id}>
              {part.title}
            </option>
          ))}
        </optgroup>
      </select>
      {bad && (
        <p class="say bad" id={`${id}-say`}>
          <b>{bad.wrong}</b>
        </p>
      )}
    </div>
  );
}
