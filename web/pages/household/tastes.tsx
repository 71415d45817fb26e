/** What the household thinks of its dishes: loved, fine, tired of, never. The season's plan asks first what is loved, and never what is not. */
import { useState } from "preact/hooks";
import { LIKINGS, type Taste } from "#shared/contracts/tastes.ts";
import { putTaste, removeTaste } from "../../api/calls.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { Choice, FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";

type Liking = Taste["liking"];
const WORDS: Readonly<Record<Liking, string>> = { loved: "Loved", fine: "Fine", tired: "Tired of it", never: "Never" };

interface TastesProps {
  readonly tastes: readonly Taste[];
  readonly recipes: readonly { readonly id: string; readonly title: string }[];
  readonly again: () => Promise<void>;
}

export function Tastes({ tastes, recipes, again }: TastesProps) {
  const [dish, setDish] = useState("");
  const [liking, setLiking] = useState<Liking>("loved");
  const [done, setDone] = useState<{ readonly words: string; readonly undo?: () => Promise<void> } | null>(null);
  const { failure, refuse, attempt, bad } = useAttempts(() => "taste-dish");
  const finish = async (words: string, undo?: () => Promise<void>): Promise<void> => {
    await again();
    setDone({ words, ...(undo ? { undo } : {}) });
  };
  const say = async (): Promise<void> => {
    const recipe = recipes.find(({ title }) => title.toLowerCase() === dish.trim().toLowerCase());
    if (!recipe) return refuse([{ field: "taste-dish", text: dish.trim() === "" ? "Which dish: choose one of your recipes" : `Which dish: no recipe is called “${dish.trim()}”` }], "this");
    const sent = await attempt(async () => {
      await putTaste(recipe.id, { liking });
      await finish(`${recipe.title}: ${WORDS[liking].toLowerCase()}.`);
    });
    if (sent) setDish("");
  };
  const forget = (taste: Taste): Promise<boolean> =>
    attempt(async () => {
      await removeTaste(taste.recipeId);
      await finish(`${taste.title}: nobody says any more.`, async () => {
        await putTaste(taste.recipeId, { liking: taste.liking });
        await finish(`${taste.title}: ${WORDS[taste.liking].toLowerCase()} again.`);
      });
    });
  return (
    <section class="sec" aria-labelledby="tastes-h">
      <h2 id="tastes-h">What we think of our dishes</h2>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} faults={failure.faults} />}
      {done && <UndoLine done={done.words} undo={done.undo && (() => void attempt(done.undo as () => Promise<void>))} of={done.words} />}
      <ul class="rows deed-rows tastes">
        {tastes.map((taste) => (
          <li key={taste.recipeId}>
            <p>
              <b class="what">{taste.title}</b> <span class="quiet">{WORDS[taste.liking].toLowerCase()}</span>
            </p>
            <button type="button" class="btn word" onClick={() => void forget(taste)}>
              Forget it<span class="vh">: {taste.title}</span>
            </button>
          </li>
        ))}
      </ul>
      <form
        class="household-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void say();
        }}
      >
        <FormField id="taste-dish" label="Which dish" value={dish} onInput={setDish} bad={bad("taste-dish")} list="taste-dishes" />
        <datalist id="taste-dishes">
          {recipes.map(({ id, title }) => (
            <option key={id} value={title} />
          ))}
        </datalist>
        <Choice name="taste-liking" legend="What we think of it" chosen={liking} onChoose={setLiking} options={LIKINGS.map((value) => ({ value, words: WORDS[value] }))} />
        <p class="acts">
          <button type="submit" class="btn">
            Say so
          </button>
        </p>
      </form>
    </section>
  );
}
