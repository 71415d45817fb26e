/** What can be done with a recipe. Removing needs no question: it is taken back with one press. */
import { useState } from "preact/hooks";
import type { NewRecipe, Recipe } from "#shared/contracts/recipes.ts";
import { putRecipe, recipe as fetchRecipe, removeRecipe } from "../../api/calls.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";
import { readRecipe } from "./read-recipe.ts";
import { recipeFields } from "./recipe-form.ts";

interface ActionsProps {
  readonly recipe: Recipe;
  readonly again: () => Promise<void>;
  readonly onGone: (gone: boolean) => void;
  readonly gone: boolean;
}

export function Actions({ recipe, again, gone, onGone }: ActionsProps) {
  const { failure, attempt } = useAttempts();
  const [removed, setRemoved] = useState<NewRecipe | null>(null);
  const remove = () =>
    attempt(async () => {
      const read = readRecipe(recipeFields(recipe));
      await removeRecipe(recipe.id);
      // where our own stood over one of the book's, the book's is there again
      const back = await fetchRecipe(recipe.id).then(
        () => true,
        () => false,
      );
      if (back) await again();
      else onGone(true);
      if (read.ok) setRemoved(read.body);
    });
  const undo = (body: NewRecipe) =>
    attempt(async () => {
      await putRecipe(recipe.id, body);
      setRemoved(null);
      onGone(false);
      await again();
    });
  return (
    <>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} />}
      {removed && <UndoLine done={gone ? `${removed.title} is removed.` : `${removed.title} is removed; the book’s own recipe stands here again.`} undo={() => void undo(removed)} of="the removal" />}
      <p class="acts no-print">
        {gone ? (
          <a class="btn main" href="/recipes">
            To all recipes
          </a>
        ) : (
          <>
            <a class="btn main" href={`/cook-day?recipe=${recipe.id}`}>
              Put it into a cook day
            </a>
            <button type="button" class="btn" onClick={() => print()}>
              Print
            </button>
            <a class="btn word" href={`/recipes/${recipe.id}?change`}>
              Change the recipe
            </a>
            {recipe.origin === "own" && (
              <button type="button" class="btn word" onClick={() => void remove()}>
                Remove the recipe
              </button>
            )}
          </>
        )}
      </p>
    </>
  );
}
