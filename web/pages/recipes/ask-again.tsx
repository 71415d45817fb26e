/** Somebody wants it again, and what we think of it: a wish goes to the season's plan, a mark says how often it may come. */
import { useState } from "preact/hooks";
import type { Recipe } from "#shared/contracts/recipes.ts";
import type { Taste } from "#shared/contracts/tastes.ts";
import { putTaste, putWish, removeTaste, removeWish, tastes } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { newId } from "../../api/new-id.ts";
import { count } from "../../format.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";

const LIKING_WORDS: Readonly<Record<Taste["liking"], string>> = { loved: "Loved", fine: "Fine", tired: "Tired of it", never: "Never" };

export function AskAgain({ recipe }: { readonly recipe: Recipe }) {
  const { load, again } = useLoad(`tastes ${recipe.id}`, (signal) => tastes(signal));
  const [asked, setAsked] = useState<string | null>(null);
  const { failure, attempt } = useAttempts();
  const portions = portionsOf(recipe);
  const liking = load.state === "ready" ? (load.value.find(({ recipeId }) => recipeId === recipe.id)?.liking ?? "") : "";
  const ask = () =>
    attempt(async () => {
      const id = newId();
      await putWish(id, { recipeId: recipe.id, portions });
      setAsked(id);
    });
  const undo = (id: string) =>
    attempt(async () => {
      await removeWish(id);
      setAsked(null);
    });
  const mark = (chosen: string) =>
    attempt(async () => {
      await (chosen === "" ? removeTaste(recipe.id) : putTaste(recipe.id, { liking: chosen as Taste["liking"] }));
      await again();
    });
  return (
    <section class="sec no-print ask-again" aria-labelledby="again-h">
      <h2 id="again-h">Again?</h2>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} />}
      {asked && <UndoLine done={`Asked for: ${count(portions, "portion", "portions")} of ${recipe.title}. The season’s plan makes room for it.`} undo={() => void undo(asked)} of="the wish" />}
      <div class="form-field">
        <label for="liking">What we think of it</label>
        <select class="field" id="liking" value={liking} disabled={load.state !== "ready"} onChange={(event) => void mark(event.currentTarget.value)}>
          <option value="">Nothing said</option>
          {Object.entries(LIKING_WORDS).map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </div>
      <p class="acts">
        <button type="button" class="btn" disabled={asked !== null} onClick={() => void ask()}>
          Ask for this again
        </button>
      </p>
    </section>
  );
}

/** One batch, where it is counted in portions; a usual table else. */
const portionsOf = ({ makes }: Recipe): number => (/portion|serving/i.test(makes.unit) ? Math.max(1, Math.round(makes.amount)) : USUAL_PORTIONS);
/** Common practice, no source. */
const USUAL_PORTIONS = 4;
