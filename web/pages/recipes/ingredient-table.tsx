/** What goes in, by weight and by measure: for one batch as written, or for as much as is asked. */
import type { Recipe } from "#shared/contracts/recipes.ts";
import type { Scaled } from "#shared/contracts/scaling.ts";
import { capital } from "../../format.ts";
import { written } from "../../parts/written.ts";
import { MEASURE_WORDS } from "./recipe-form.ts";
import { errorWords, headOf } from "./scaled-words.ts";

type Line = Recipe["ingredients"][number];

interface IngredientsProps {
  readonly recipe: Recipe;
  readonly scaled: Scaled | null;
  readonly all: readonly Recipe[];
}

export function Ingredients({ recipe, scaled, all }: IngredientsProps) {
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
                <th scope="col">{scaled ? headOf(scaled) : "For one batch"}</th>
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
                <Row key={`${i}-${line.text}`} line={line} more={scaled?.ingredients[i] ?? null} part={all.find((one) => one.id === line.madeBy)} />
              ))}
            </tbody>
          </table>
          <p class="say">Both columns are reckoned from the line as written. A line without a known weight stands as it was written.{recipe.measures && ` Cups and spoons as written are ${MEASURE_WORDS[recipe.measures].toLowerCase().replace(/: .*/, "")} ones.`}</p>
        </>
      )}
    </section>
  );
}

function Row({ line, more, part }: { readonly line: Line; readonly more: Scaled["ingredients"][number] | null; readonly part: Recipe | undefined }) {
  const { byWeight, byMeasure } = more ?? line;
  const known = byWeight !== null || byMeasure !== null;
  const name = capital(known && line.read ? [line.read.food, line.read.comment].filter(Boolean).join(", ") : written(more?.line ?? line.text));
  const off = errorWords(more?.measureErrorPercent ?? null);
  return (
    <tr>
      <th scope="row" colSpan={known ? 1 : 3}>
        {part ? <a href={`/recipes/${part.id}`}>{name}</a> : name}
        {part && <span class="quiet">, made ahead</span>}
        {line.doubt && <span class="say scaled-note">Check: {written(line.doubt)}</span>}
        {more?.note && <span class="say scaled-note">{written(more.note)}</span>}
      </th>
      {known && <td class="num amt">{byWeight ?? "–"}</td>}
      {known && (
        <td class="num">
          {byMeasure ?? "–"}
          {off && <span class="say"> {off}</span>}
        </td>
      )}
    </tr>
  );
}
