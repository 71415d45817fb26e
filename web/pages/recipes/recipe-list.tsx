/** All recipes: searched by name and by what goes in, narrowed to a crop or a way. Without that our own, then the book's behind their ways. */
import type { Crop } from "#shared/contracts/crops.ts";
import type { RecipeBrief } from "#shared/contracts/recipes.ts";
import { WAYS } from "#shared/kernel/way.ts";
import { capital, whole } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { FormField } from "../../parts/form-field.tsx";
import { setQuery } from "../../router.ts";
import { found, isNarrowed, type Asked } from "./recipe-search.ts";
import { useAtHand } from "./use-at-hand.ts";
import { briefly, WAY_WORDS } from "./recipe-words.ts";

interface RecipeListProps {
  readonly all: readonly RecipeBrief[];
  readonly book: readonly Crop[];
  readonly asked: Asked;
}

export function RecipeList({ all, book, asked }: RecipeListProps) {
  const hand = useAtHand(asked.hand);
  const shown = found(all, asked, new Map(book.map(({ crop, name }) => [crop, name])), hand.crops);
  const narrowed = isNarrowed(asked);
  const own = all.filter((recipe) => recipe.origin === "own");
  const used = book.filter((one) => all.some((recipe) => recipe.uses.some((use) => use.crop === one.crop)));
  return (
    <>
      <Answer>
        {whole(all.length)} recipes and plain methods, {own.length === 0 ? "none of our own yet" : own.length === 1 ? "one of our own" : `${whole(own.length)} of our own`}.
      </Answer>
      <div class="narrow-by">
        <FormField id="by-words" label="Find by name or by what goes in" value={asked.words} onInput={(words) => setQuery({ words: words || null })} />
        <Select id="by-crop" label="With" any="any crop" chosen={asked.hand ? AT_HAND : asked.crop} onChoose={(crop) => setQuery({ crop: crop === AT_HAND ? null : crop, hand: crop === AT_HAND ? "1" : null })} options={[[AT_HAND, "what is at hand"], ...used.map(({ crop, name }) => [crop, name] as const)]} />
        <Select id="by-way" label="To" any="any way" chosen={asked.way} onChoose={(way) => setQuery({ way })} options={WAYS.map((way) => [way, WAY_WORDS[way]])} />
      </div>
      <p class="under" role="status">
        {asked.hand ? `${hand.sentence} ` : ""}
        {!narrowed || (asked.hand && hand.crops === null) ? "" : shown.length === 0 ? "Nothing fits. Change a word, choose another crop or way, or write one." : shown.length === 1 ? "One fits." : `${whole(shown.length)} fit.`}
      </p>
      <p class="acts">
        <a class="btn main" href="/recipes/new">
          Write a recipe
        </a>
        <a class="btn" href="/recipes/new?paste">
          Paste a recipe
        </a>
        <a class="btn word" href="/keeping">
          Can I keep this?
        </a>
        {narrowed && (
          <button type="button" class="btn word" onClick={() => setQuery({ words: null, crop: null, way: null, hand: null })}>
            Show all
          </button>
        )}
      </p>
      {!narrowed && own.length > 0 && (
        <section class="sec" aria-labelledby="own-h">
          <h2 id="own-h">Our own</h2>
          <Rows recipes={own} mixed={false} />
        </section>
      )}
      {WAYS.map((way) => {
        const recipes = shown.filter((recipe) => recipe.way === way);
        return recipes.length > 0 && (narrowed ? <Open key={way} way={way} recipes={recipes} /> : <Behind key={way} way={way} recipes={recipes} />);
      })}
    </>
  );
}

/** Stands in the list of crops for those in the larder and those that ripen this week. */
const AT_HAND = "at-hand";

interface SelectProps {
  readonly id: string;
  readonly label: string;
  readonly any: string;
  readonly chosen: string | null;
  readonly onChoose: (value: string | null) => void;
  readonly options: readonly (readonly [value: string, words: string])[];
}

function Select({ id, label, any, chosen, onChoose, options }: SelectProps) {
  return (
    <div class="form-field">
      <label for={id}>{label}</label>
      <select class="field" id={id} value={chosen ?? ""} onChange={(event) => onChoose(event.currentTarget.value || null)}>
        <option value="">{any}</option>
        {options.map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}

interface WayProps {
  readonly way: RecipeBrief["way"];
  readonly recipes: readonly RecipeBrief[];
}

function Open({ way, recipes }: WayProps) {
  return (
    <section class="sec" aria-labelledby={`way-${way}`}>
      <h2 id={`way-${way}`}>{capital(WAY_WORDS[way])}</h2>
      <Rows recipes={recipes} />
    </section>
  );
}

function Behind({ way, recipes }: WayProps) {
  return (
    <details class="sec way-group">
      <summary>
        <h2>
          {capital(WAY_WORDS[way])}
          <span class="quiet">, {whole(recipes.length)}</span>
        </h2>
      </summary>
      <Rows recipes={recipes} />
    </details>
  );
}

/** `mixed`: the book's and our own stand together. */
function Rows({ recipes, mixed = true }: { readonly recipes: readonly RecipeBrief[]; readonly mixed?: boolean }) {
  return (
    <ul class="rows recipe-rows">
      {[...recipes]
        .sort((a, b) => a.title.localeCompare(b.title, "en"))
        .map((recipe) => (
          <li key={recipe.id}>
            <a class="what" href={`/recipes/${recipe.id}`}>
              {recipe.title}
            </a>
            <span class="quiet">
              {briefly(recipe)}
              {mixed && recipe.origin === "own" ? " · our own" : ""}
            </span>
          </li>
        ))}
    </ul>
  );
}
