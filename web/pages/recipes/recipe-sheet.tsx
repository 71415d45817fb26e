/** One recipe: both unit systems side by side, the method with its times, what keeps it safe. Printable on one sheet. */
import { useState } from "preact/hooks";
import type { Ingredient, Recipe } from "#shared/contracts/recipes.ts";
import { removeRecipe } from "../../api/calls.ts";
import { asProblem } from "../../api/problem.ts";
import { amount, length, listed, lower } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { goTo } from "../../router.ts";
import { keepsWords, recipeSentence, stepTimes } from "./recipe-words.ts";

interface SheetProps {
  readonly recipe: Recipe;
  readonly all: readonly Recipe[];
}

export function RecipeSheet({ recipe, all }: SheetProps) {
  return (
    <>
      <Answer>{recipeSentence(recipe)}</Answer>
      <Facts recipe={recipe} />
      <div class="recipe">
        <Ingredients recipe={recipe} all={all} />
        <Method recipe={recipe} />
      </div>
      {recipe.processing.length > 0 && (
        <section class="sec" aria-labelledby="tested">
          <h2 id="tested">Tested process, at your altitude</h2>
          <ul class="rows">
            {recipe.processing.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      )}
      {recipe.note && <p class="under">{recipe.note}</p>}
      {recipe.cautions.length > 0 && (
        <section class="sec" aria-labelledby="care">
          <h2 id="care">Take care</h2>
          <ul class="rows care">
            {recipe.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </section>
      )}
      <Actions recipe={recipe} />
      {recipe.sources.length > 0 && (
        <details class="sec">
          <summary class="word">Where the figures come from</summary>
          <ul class="rows">
            {recipe.sources.map(({ id, text }) => (
              <li key={id}>{text}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Facts({ recipe }: { readonly recipe: Recipe }) {
  const ovens = [...new Set(recipe.steps.flatMap((step) => (step.needs.oven ? [step.needs.oven.c] : [])))];
  const facts: [string, string][] = [
    ["Hands on", length(recipe.handsOnMin)],
    ["Oven", ovens.map((c) => `${c} °C`).join(", ")],
    ["Uses from the garden", listed(recipe.uses.map(({ crop, grams }) => `${lower(crop.replaceAll("-", " "))} ${amount(grams)}`))],
    ["Keeps", keepsWords(recipe.keeps)],
    ["To reheat", recipe.reheat ?? ""],
    ["Contains", recipe.allergens.length > 0 ? recipe.allergens.join(", ") : "no allergen is stated"],
  ];
  return (
    <dl class="times">
      {facts
        .filter(([, words]) => words !== "")
        .map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
    </dl>
  );
}

function Ingredients({ recipe, all }: SheetProps) {
  return (
    <section class="sec" aria-labelledby="ingredients">
      <h2 id="ingredients">Ingredients</h2>
      {recipe.ingredients.length === 0 ? (
        <p class="under">Nothing is listed.</p>
      ) : (
        <table class="ingr">
          <thead>
            <tr>
              <th scope="col">For one batch</th>
              <th scope="col" class="num">
                By weight
              </th>
              <th scope="col" class="num">
                By measure
              </th>
            </tr>
          </thead>
          <tbody>
            {recipe.ingredients.map((line, i) => (
              <IngredientRow key={`${i}-${line.text}`} line={line} part={all.find((one) => one.id === line.madeBy)} />
            ))}
          </tbody>
        </table>
      )}
      <p class="say">Both columns are reckoned from the line as written. Where no weight is known for a measure, the line stands as it is.</p>
    </section>
  );
}

function IngredientRow({ line, part }: { readonly line: Ingredient; readonly part: Recipe | undefined }) {
  const known = line.byWeight !== null || line.byMeasure !== null;
  const name = known && line.read ? [line.read.food, line.read.comment].filter(Boolean).join(", ") : line.text;
  return (
    <tr>
      <th scope="row">
        {part ? <a href={`/recipes/${part.id}`}>{name}</a> : name}
        {part && <span class="quiet">, made ahead</span>}
      </th>
      <td class="num amt">{line.byWeight ?? "–"}</td>
      <td class="num">{line.byMeasure ?? "–"}</td>
    </tr>
  );
}

function Method({ recipe }: { readonly recipe: Recipe }) {
  return (
    <section class="sec" aria-labelledby="method">
      <h2 id="method">Method</h2>
      <ol class="method">
        {recipe.steps.map((step) => (
          <li key={step.id}>
            <div>
              <p>{step.text}</p>
              <p class="say">{stepTimes(step)}</p>
            </div>
          </li>
        ))}
      </ol>
      {recipe.limits.map((limit) => (
        <p class="say" key={`${limit.from}-${limit.to}`}>
          {limit.why ? `${limit.why.charAt(0).toUpperCase()}${limit.why.slice(1)}: ` : ""}at most {length(limit.maxMin)} from “{textOf(recipe, limit.from)}” to “{textOf(recipe, limit.to)}”.
        </p>
      ))}
    </section>
  );
}

const textOf = (recipe: Recipe, id: string): string => recipe.steps.find((step) => step.id === id)?.text ?? id;

function Actions({ recipe }: { readonly recipe: Recipe }) {
  const [failed, setFailed] = useState<string | null>(null);
  const remove = async (): Promise<void> => {
    try {
      await removeRecipe(recipe.id);
      goTo("/recipes");
    } catch (thrown) {
      setFailed(asProblem(thrown).message);
    }
  };
  return (
    <>
      {failed !== null && <ProblemNote lead={failed} />}
      <p class="acts no-print">
        <a class="btn main" href={`/cook-day?recipe=${recipe.id}`}>
          Plan a cook day with it
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
      </p>
    </>
  );
}
