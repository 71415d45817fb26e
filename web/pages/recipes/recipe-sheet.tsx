/** One recipe: both unit systems side by side, the method with its times, what keeps it safe. Printable on one sheet. */
import { useState } from "preact/hooks";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import type { Scaled } from "#shared/contracts/scaling.ts";
import { scaledRecipe } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { length } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { ovenHeat } from "../../parts/heat.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { written } from "../../parts/written.ts";
import { AskAgain } from "./ask-again.tsx";
import { Ingredients } from "./ingredient-table.tsx";
import { Actions } from "./recipe-actions.tsx";
import { ScaleControl } from "./scale-control.tsx";
import { askedOf, scaleFault, type ScaleFields } from "./scale-form.ts";
import { Checks } from "./scaled-checks.tsx";
import { scaledSentence } from "./scaled-words.ts";
import { keepsWords, limitSentence, recipeSentence, stepTimes, usesWords } from "./recipe-words.ts";

interface SheetProps {
  readonly recipe: Recipe;
  readonly all: readonly Recipe[];
  readonly book: readonly Crop[];
  /** For how much, as the address has it. */
  readonly amount: ScaleFields;
  readonly again: () => Promise<void>;
}

export function RecipeSheet({ recipe, all, book, amount, again }: SheetProps) {
  const names = new Map(book.map(({ crop, name }) => [crop, name]));
  const asked = askedOf(amount);
  const key = asked.kind === "ask" ? `${recipe.id} ${JSON.stringify(asked.body)}` : recipe.id;
  const { load } = useLoad<Scaled | null>(key, async (signal) => (asked.kind === "ask" ? scaledRecipe(recipe.id, asked.body, signal) : null));
  const scaled = asked.kind === "ask" && load.state === "ready" ? load.value : null;
  const refused = asked.kind === "ask" && load.state === "failed" ? load.problem : null;
  const faults = asked.kind === "wrong" ? asked.faults : (refused?.fields.map(({ path, message }) => scaleFault(path.split("."), message)) ?? []);
  const [gone, setGone] = useState(false);
  const actions = <Actions recipe={recipe} again={again} gone={gone} onGone={setGone} />;
  return (
    <>
      <Answer live>{gone ? `${recipe.title} is no longer among the recipes.` : scaled ? scaledSentence(recipe, scaled, amount, names) : recipeSentence(recipe)}</Answer>
      {!gone && <Facts recipe={recipe} uses={scaled?.uses ?? recipe.uses} names={names} />}
      {!gone && <ScaleControl recipe={recipe} book={book} fields={amount} faults={faults} />}
      {refused && <ProblemNote key={key} lead={faults.length > 0 ? "This amount cannot be reckoned; below it stands as written" : refused.message} faults={faults} />}
      {scaled && <Checks scaled={scaled} dishes={asked.kind === "ask" ? (asked.body.dish ?? null) : null} />}
      {!gone && (
        <div class="recipe">
          <Ingredients recipe={recipe} scaled={scaled} all={all} />
          <Method recipe={recipe} scaled={scaled} />
        </div>
      )}
      {!gone && recipe.processing.length > 0 && <Lines id="tested" title="Tested process, at your altitude" lines={recipe.processing} />}
      {!gone && recipe.note && <p class="under">{written(recipe.note)}</p>}
      {!gone && recipe.cautions.length > 0 && <Lines id="care" title="Take care" lines={recipe.cautions} />}
      {actions}
      {!gone && <AskAgain key={recipe.id} recipe={recipe} />}
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

function Facts({ recipe, uses, names }: { readonly recipe: Recipe; readonly uses: Recipe["uses"]; readonly names: ReadonlyMap<string, string> }) {
  const ovens = [...new Set(recipe.steps.flatMap((step) => (step.needs.oven ? [step.needs.oven.c] : [])))];
  const facts: [string, string][] = [
    ["Hands on", recipe.handsOnMin > 0 ? length(recipe.handsOnMin) : ""],
    ["Oven", ovens.map(ovenHeat).join(", ")],
    ["Uses from the garden", usesWords(uses, names)],
    ["Keeps", keepsWords(recipe.keeps)],
    ["Contains", recipe.allergens.length > 0 ? recipe.allergens.join(", ") : "no allergen is stated"],
    ["To reheat", written(recipe.reheat ?? "")],
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

function Method({ recipe, scaled }: Pick<SheetProps, "recipe"> & { readonly scaled: Scaled | null }) {
  const more = new Map(scaled?.steps.map((step) => [step.id, step]));
  return (
    <section class="sec" aria-labelledby="method">
      <h2 id="method">Method</h2>
      {recipe.steps.length === 0 && <p class="under">No step is written down.</p>}
      <ol class="method">
        {recipe.steps.map((step) => (
          <li key={step.id}>
            <div>
              <p>{written(step.text)}</p>
              <p class="say">{stepTimes(scaled ? { ...step, handsOnMin: more.get(step.id)?.handsOnMin ?? step.handsOnMin } : step, recipe.steps)}</p>
              {more.get(step.id)?.note && <p class="say scaled-note">{written(more.get(step.id)?.note ?? "")}</p>}
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
          <li key={line}>{written(line)}</li>
        ))}
      </ul>
    </section>
  );
}
