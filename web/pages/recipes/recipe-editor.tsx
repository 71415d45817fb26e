/** Writing a recipe: what goes in, the steps with their minutes and needs, how long it keeps. */
import { useState } from "preact/hooks";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { WAYS } from "#shared/kernel/way.ts";
import { putRecipe } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { Answer } from "../../parts/answer.tsx";
import { Choice, FormField } from "../../parts/form-field.tsx";
import { leadFor, type FieldProblem } from "../../parts/field-problem.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { goTo } from "../../router.ts";
import { IngredientRows } from "./ingredient-rows.tsx";
import { faultAt, readRecipe, recipeFields, type RecipeFields } from "./recipe-form.ts";
import { WAY_WORDS } from "./recipe-words.ts";
import { StepRows } from "./step-rows.tsx";

interface EditorProps {
  readonly stored: Recipe | null;
  readonly book: readonly Crop[];
  readonly all: readonly Recipe[];
}

export function RecipeEditor({ stored, book, all }: EditorProps) {
  const [id] = useState(() => stored?.id ?? newId());
  const [fields, setFields] = useState<RecipeFields>(() => recipeFields(stored));
  const [attempt, setAttempt] = useState<{ readonly n: number; readonly lead: string; readonly faults: readonly FieldProblem[] } | null>(null);
  const set = (change: Partial<RecipeFields>): void => setFields((before) => ({ ...before, ...change }));
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    const n = (attempt?.n ?? 0) + 1;
    const read = readRecipe(fields, stored);
    if (!read.ok) return setAttempt({ n, lead: leadFor(read.faults.length, "the recipe"), faults: read.faults });
    try {
      await putRecipe(id, read.body);
      goTo(`/recipes/${id}`);
    } catch (thrown) {
      const problem = asProblem(thrown);
      const lead = problem.stale ? "Somebody else changed this recipe meanwhile. Copy what you typed, load the page again, then make your change." : problem.message;
      setAttempt({ n, lead, faults: problem.fields.map(({ path, message }) => faultAt(path.split("."), message)) });
    }
  };
  const badOf = (field: string): { wrong: string } | null => {
    const fault = attempt?.faults.find((one) => one.field === field);
    return fault ? { wrong: fault.text } : null;
  };
  type Line = Exclude<keyof RecipeFields, "ingredients" | "steps" | "way">;
  const line = (name: Line, label: string, say?: string, mode: "text" | "decimal" | "numeric" = "text") => (
    <FormField id={name} label={label} value={fields[name]} onInput={(value) => set({ [name]: value })} say={say} bad={badOf(name)} inputMode={mode} />
  );
  return (
    <form onSubmit={(event) => void save(event)} noValidate>
      <Answer>{stored ? `Change ${stored.title}.` : "Write down a recipe of our own."}</Answer>
      {attempt && <ProblemNote key={attempt.n} lead={attempt.lead} faults={attempt.faults} />}
      <section class="sec">
        <h2>The dish</h2>
        {line("title", "Name of the dish")}
        <Choice name="way" legend="What it does with the produce" chosen={fields.way} onChoose={(way) => set({ way })} options={WAYS.map((value) => ({ value, words: WAY_WORDS[value] }))} />
        <div class="form-pair">
          {line("makesAmount", "One batch makes", undefined, "decimal")}
          {line("makesUnit", "Of what", "portions, jars, bags, loaves, kg …")}
        </div>
      </section>
      <IngredientRows rows={fields.ingredients} book={book} all={all.filter((one) => one.id !== id)} onChange={(ingredients) => set({ ingredients })} badOf={badOf} />
      <StepRows rows={fields.steps} onChange={(steps) => set({ steps })} badOf={badOf} />
      <section class="sec">
        <h2>Pot, keeping, care</h2>
        <div class="form-pair">
          {line("potFrom", "It stays in a large pot from step", "The number of the step; empty for no large pot.", "numeric")}
          {line("potTo", "to the end of step", undefined, "numeric")}
        </div>
        <div class="form-pair">
          {line("fridgeDays", "Days in the fridge", undefined, "numeric")}
          {line("freezerDays", "Days in the freezer", undefined, "numeric")}
          {line("cellarDays", "Days in the cellar", undefined, "numeric")}
          {line("shelfDays", "Days on the shelf", "What is bottled or pickled stands on a shelf only by a tested process.", "numeric")}
        </div>
        {line("process", "Tested process, if there is one", "Its key in the tested tables, such as tomatoes-crushed. Leave empty for a recipe of your own.")}
        {line("allergens", "Contains", "Allergens, parted by commas: milk, egg, gluten …")}
        {line("reheat", "To reheat")}
        {line("note", "Note")}
      </section>
      <p class="acts">
        <button type="submit" class="btn main">
          Save recipe
        </button>
        <a class="btn word" href={stored ? `/recipes/${stored.id}` : "/recipes"}>
          Leave without saving
        </a>
      </p>
    </form>
  );
}
