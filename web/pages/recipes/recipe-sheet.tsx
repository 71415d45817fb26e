/** One recipe: both unit systems side by side, the method with its times, what keeps it safe. Printable on one sheet. */
import { useState } from "preact/hooks";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Ingredient, Recipe } from "#shared/contracts/recipes.ts";
import { capital, degrees, length } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { Actions } from "./recipe-actions.tsx";
import { keepsWords, limitSentence, recipeSentence, stepTimes, usesWords } from "./recipe-words.ts";

interface SheetProps {
  readonly recipe: Recipe;
  readonly all: readonly Recipe[];
  readonly book: readonly Crop[];
  readonly again: () => Promise<void>;
}

export function RecipeSheet({ recipe, all, book, again }: SheetProps) {
  const [gone, setGone] = useState(false);
  const actions = <Actions recipe={recipe} again={again} gone={gone} onGone={setGone} />;
  return (
    <>
      <Answer>{gone ? `${recipe.title} is no longer among the recipes.` : recipeSentence(recipe)}</Answer>
      {!gone && <Facts recipe={recipe} book={book} />}
      {!gone && (
        <div class="recipe">
          <Ingredients recipe={recipe} all={all} />
          <Method recipe={recipe} />
        </div>
      )}
      {!gone && recipe.processing.length > 0 && <Lines id="tested" title="Tested process, at your altitude" lines={recipe.processing} />}
      {!gone && recipe.note && <p class="under">{recipe.note}</p>}
      {!gone && recipe.cautions.length > 0 && <Lines id="care" title="Take care" lines={recipe.cautions} />}
      {actions}
      {!gone && recipe.sources.length > 0 && (
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

function Facts({ recipe, book }: { readonly recipe: Recipe; readonly book: readonly Crop[] }) {
  const ovens = [...new Set(recipe.steps.flatMap((step) => (step.needs.oven ? [step.needs.oven.c] : [])))];
  const facts: [string, string][] = [
    ["Hands on", recipe.handsOnMin > 0 ? length(recipe.handsOnMin) : ""],
    ["Oven", ovens.map(degrees).join(", ")],
    ["Uses from the garden", usesWords(recipe.uses, new Map(book.map(({ crop, name }) => [crop, name])))],
    ["Keeps", keepsWords(recipe.keeps)],
    ["Contains", recipe.allergens.length > 0 ? recipe.allergens.join(", ") : "no allergen is stated"],
    ["To reheat", recipe.reheat ?? ""],
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

function Ingredients({ recipe, all }: Pick<SheetProps, "recipe" | "all">) {
  return (
    <section class="sec" aria-labelledby="ingredients">
      <h2 id="ingredients">Ingredients</h2>
      {recipe.ingredients.length === 0 ? (
        <p class="under">Nothing is listed.</p>
      ) : (
        <>
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
          <p class="say">Both columns are reckoned from the line as written. A line without a known weight stands as it was written.</p>
        </>
      )}
    </section>
  );
}

function IngredientRow({ line, part }: { readonly line: Ingredient; readonly part: Recipe | undefined }) {
  const known = line.byWeight !== null || line.byMeasure !== null;
  const name = capital(known && line.read ? [line.read.food, line.read.comment].filter(Boolean).join(", ") : line.text);
  return (
    <tr>
      <th scope="row" colSpan={known ? 1 : 3}>
        {part ? <a href={`/recipes/${part.id}`}>{name}</a> : name}
        {part && <span class="quiet">, made ahead</span>}
      </th>
      {known && <td class="num amt">{line.byWeight ?? "–"}</td>}
      {known && <td class="num">{line.byMeasure ?? "–"}</td>}
    </tr>
  );
}

function Method({ recipe }: Pick<SheetProps, "recipe">) {
  return (
    <section class="sec" aria-labelledby="method">
      <h2 id="method">Method</h2>
      {recipe.steps.length === 0 && <p class="under">No step is written down.</p>}
      <ol class="method">
        {recipe.steps.map((step) => (
          <li key={step.id}>
            <div>
              <p>{step.text}</p>
              <p class="say">{stepTimes(step, recipe.steps)}</p>
            </div>
          </li>
        ))}
      </ol>
      {recipe.limits.map((limit) => (
        <p class="limit" key={`${limit.from}-${limit.to}`}>
          {limitSentence(limit, recipe.steps)}
        </p>
      ))}
    </section>
  );
}

function Lines({ id, title, lines }: { readonly id: string; readonly title: string; readonly lines: readonly string[] }) {
  return (
    <section class="sec" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <ul class="rows care">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
