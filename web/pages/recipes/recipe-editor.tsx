/** Writing a recipe: what goes in, the steps with their minutes and needs, how long it keeps. */
import { useState } from "preact/hooks";
import type { Crop } from "#shared/contracts/crops.ts";
import type { RecipeDraft } from "#shared/contracts/recipe-reading.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { PLACE_KINDS, WAYS } from "#shared/kernel/way.ts";
import { putRecipe, recipe as fetchRecipe } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { capital } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { Conflict } from "../../parts/conflict.tsx";
import { leadFor, type FieldProblem } from "../../parts/field-problem.ts";
import { Choice, FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { goTo } from "../../router.ts";
import { BetweenRows } from "./between-rows.tsx";
import { doubtsOf, draftSentence, readingsOf } from "./draft-notes.ts";
import { DraftNotes } from "./draft-view.tsx";
import { IngredientRows } from "./ingredient-rows.tsx";
import { MeasureChoice } from "./measure-choice.tsx";
import { readRecipe } from "./read-recipe.ts";
import { differences } from "./recipe-conflict.ts";
import { faultAt } from "./recipe-faults.ts";
import { recipeFields, type RecipeFields } from "./recipe-form.ts";
import { WAY_WORDS } from "./recipe-words.ts";
import { StepRows } from "./step-rows.tsx";

interface EditorProps {
  readonly stored: Recipe | null;
  readonly book: readonly Crop[];
  readonly all: readonly Recipe[];
  /** Fetches the page's data anew, so that the recipe is shown as it was saved. */
  readonly again: () => Promise<void>;
  /** Read from what was pasted; looked over here before it is stored. */
  readonly draft?: RecipeDraft;
  readonly onStored?: () => void;
}

interface Attempt {
  /** Rises with each failed try, so that the note takes the focus again. */
  readonly n: number;
  readonly lead: string;
  readonly faults: readonly FieldProblem[];
}

type Line = Exclude<keyof RecipeFields, "ingredients" | "steps" | "holds" | "limits" | "keeps" | "way" | "measures">;

export function RecipeEditor({ stored, book, all, again, draft, onStored }: EditorProps) {
  const [id] = useState(() => stored?.id ?? newId());
  const [fields, setFields] = useState<RecipeFields>(() => recipeFields(stored ?? draft?.recipe ?? null));
  const [attempt, setAttempt] = useState<Attempt | null>(null);
  const [theirs, setTheirs] = useState<Recipe | null>(null);
  const [busy, setBusy] = useState(false);
  const set = (change: Partial<RecipeFields>): void => setFields((before) => ({ ...before, ...change }));
  const fail = (lead: string, faults: readonly FieldProblem[]): void => setAttempt((before) => ({ n: (before?.n ?? 0) + 1, lead, faults }));
  const refused = async (thrown: unknown): Promise<void> => {
    const problem = asProblem(thrown);
    if (!problem.stale) return fail(problem.message, problem.fields.map(({ path, message }) => faultAt(path.split("."), message, fields)));
    // reading theirs also learns its version, so that “keep mine” is taken
    const now = await fetchRecipe(id).catch(() => null);
    if (now) setTheirs(now);
    else fail(problem.message, []);
  };
  const send = async (): Promise<void> => {
    const read = readRecipe(fields);
    setTheirs(null);
    if (!read.ok) return fail(leadFor(read.faults.length, "the recipe"), read.faults);
    try {
      await putRecipe(id, read.body);
      await shown();
    } catch (thrown) {
      await refused(thrown);
    }
  };
  const shown = async (): Promise<void> => {
    onStored?.();
    if (stored) await again();
    goTo(`/recipes/${id}`);
  };
  const save = async (): Promise<void> => {
    if (busy) return;
    setBusy(true);
    await send();
    setBusy(false);
  };
  const badOf = (field: string): { wrong: string } | null => {
    const fault = attempt?.faults.find((one) => one.field === field);
    return fault ? { wrong: fault.text } : null;
  };
  const doubts = draft ? doubtsOf(draft, fields) : [];
  const readings = draft ? readingsOf(draft, fields) : [];
  /** A doubt first, then what the control was read from. */
  const sayOf = (field: string): string | undefined => [doubts.find((one) => one.field === field), readings.find((one) => one.field === field)].flatMap((note, i) => (note ? [i === 0 ? `Check: ${note.text}` : note.text] : [])).join(" ") || undefined;
  const line = (name: Line, label: string, say?: string, mode: "text" | "decimal" = "text", lines?: number) => (
    <FormField id={name} label={label} value={fields[name]} onInput={(value) => set({ [name]: value })} say={sayOf(name) ?? say} bad={badOf(name)} inputMode={mode} {...(lines === undefined ? {} : { lines })} />
  );
  return (
    <form
      class="recipe-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <Answer>{stored ? `Change ${stored.title}.` : draft ? draftSentence(doubts.length) : "Write down a recipe of our own."}</Answer>
      {stored?.origin === "book" && <p class="under">This one comes with the book. Saved, it is our own; removed later, the book’s stands here again.</p>}
      {draft && <DraftNotes doubts={doubts} notUnderstood={draft.notUnderstood} />}
      {theirs && <Conflict what={theirs.title} rows={differences(fields, recipeFields(theirs))} keepMine={() => void save()} keepTheirs={() => void shown()} />}
      {attempt && !theirs && <ProblemNote key={attempt.n} lead={attempt.lead} faults={attempt.faults} />}
      <section class="sec" aria-labelledby="dish-h">
        <h2 id="dish-h">The dish</h2>
        {line("title", "Name of the dish")}
        <Choice name="way" legend="What it does with the produce" chosen={fields.way} onChoose={(way) => set({ way })} options={WAYS.map((value) => ({ value, words: capital(WAY_WORDS[value]) }))} />
        <div class="short">
          {line("makesAmount", "One batch makes", "A number, such as 6", "decimal")}
          {line("makesUnit", "Of what", "Portions, jars, bags, loaves, kg")}
        </div>
      </section>
      <IngredientRows rows={fields.ingredients} book={book} parts={partsFor(id, all, fields)} onChange={(ingredients) => set({ ingredients })} badOf={badOf} sayOf={sayOf} />
      <MeasureChoice chosen={fields.measures} onChoose={(measures) => set({ measures })} say={sayOf("measures")} />
      <StepRows fields={fields} onChange={setFields} badOf={badOf} sayOf={sayOf} />
      <BetweenRows holds={fields.holds} limits={fields.limits} onChange={set} badOf={badOf} />
      <section class="sec" aria-labelledby="keeps-h">
        <h2 id="keeps-h">Keeping and care</h2>
        <p class="under">How many days it keeps in each place; empty where it does not stand. What is bottled or pickled stands on a shelf only by a tested process.</p>
        <div class="short">
          {PLACE_KINDS.map((place) => (
            <FormField
              key={place}
              id={`keeps-${place}`}
              label={`${capital(place)}, days`}
              value={fields.keeps[place]}
              onInput={(days) => set({ keeps: { ...fields.keeps, [place]: days } })}
              bad={badOf(`keeps-${place}`)}
              inputMode="numeric"
            />
          ))}
        </div>
        {line("process", "Tested process, if there is one", "Its name in the tested tables, such as tomatoes-crushed. Leave empty for a recipe of your own.")}
        {line("allergens", "Contains", "Allergens, parted by commas: milk, egg, gluten")}
        {line("reheat", "To reheat", undefined, "text", 2)}
        {line("note", "Note", undefined, "text", 3)}
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

/** What can be made ahead for this dish; what stands in it already is always among them. */
function partsFor(id: string, all: readonly Recipe[], fields: RecipeFields): Recipe[] {
  const there = new Set(fields.ingredients.map(({ madeBy }) => madeBy));
  return all.filter((one) => one.id !== id && (there.has(one.id) || one.way === "cook" || one.way === "freeze" || one.origin === "own")).sort((a, b) => a.title.localeCompare(b.title, "en"));
}
