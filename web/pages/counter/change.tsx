/** What else may happen on the day: a step or a dish left out, an oven broken, one dish more. Each plans the rest anew. */
import { useState } from "preact/hooks";
import type { Counter } from "#shared/contracts/counter.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { firstWords } from "./pots.ts";
import type { Acts } from "./use-acts.ts";

interface ChangeProps {
  readonly counter: Counter;
  readonly all: readonly Recipe[];
  readonly ovens: number;
  readonly acts: Acts;
}

export function Change({ counter, all, ovens, acts }: ChangeProps) {
  const titleOf = (dish: string): string => counter.dishes.find((one) => one.dish === dish)?.title ?? "";
  // loads of one step are left out together
  const waiting = counter.steps.filter((step, i) => step.startedAt === undefined && step.doneAt === undefined && counter.steps.findIndex((one) => one.dish === step.dish && one.step === step.step) === i);
  const more = all.filter(({ id, steps }) => steps.length > 0 && !counter.dishes.some(({ dish }) => dish === id)).sort((a, b) => a.title.localeCompare(b.title, "en"));
  const dishes = counter.dishes.filter(({ state }) => state !== "put away" && state !== "left out");
  return (
    <details class="c-change">
      <summary>Something else came up</summary>
      <p role="status">{acts.planning ? "Planning the rest anew." : ""}</p>
      <Ask
        id="skip-step"
        label="Leave out a step"
        button="Leave it out"
        options={waiting.map((step) => ({ value: step.key, words: `${titleOf(step.dish)}: ${firstWords(step.text)}` }))}
        onChoose={(key) => {
          const step = waiting.find((one) => one.key === key);
          if (step) acts.replan({ kind: "skip", dish: step.dish, step: step.step });
        }}
      />
      <Ask id="skip-dish" label="Leave out a whole dish" button="Leave it out" options={dishes.map(({ dish, title }) => ({ value: dish, words: title }))} onChoose={(dish) => acts.replan({ kind: "skip", dish })} />
      <Ask id="dish-more" label="One dish more" button="Put it in" options={more.map(({ id, title }) => ({ value: id, words: title }))} onChoose={(recipeId) => acts.replan({ kind: "dish-more", recipeId, batches: 1 })} />
      {ovens > 0 && (
        <Ask
          id="oven-broken"
          label="An oven is broken"
          button="Plan without it"
          options={Array.from({ length: ovens }, (_, i) => ({ value: String(i + 1), words: ovens === 1 ? "the oven" : `oven ${i + 1}` }))}
          onChoose={(oven) => acts.replan({ kind: "oven-broken", oven: Number(oven) })}
        />
      )}
      <p class="c-acts">
        <button type="button" class="btn" onClick={() => acts.replan({ kind: "from-now" })}>
          Plan the rest anew from now
        </button>
        <button type="button" class="btn" onClick={() => acts.mark({ kind: "finished" }, "The cook day is finished.")}>
          Finish the day
        </button>
      </p>
    </details>
  );
}

interface AskProps {
  readonly id: string;
  readonly label: string;
  readonly button: string;
  readonly options: readonly { readonly value: string; readonly words: string }[];
  readonly onChoose: (value: string) => void;
}

function Ask({ id, label, button, options, onChoose }: AskProps) {
  const [chosen, setChosen] = useState("");
  const [missing, setMissing] = useState(false);
  if (options.length === 0) return null;
  return (
    <form
      class="c-ask"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setMissing(chosen === "");
        if (chosen === "") return;
        onChoose(chosen);
        setChosen("");
      }}
    >
      <label for={id}>{label}</label>
      <select class="field" id={id} value={chosen} aria-invalid={missing ? "true" : undefined} aria-describedby={`${id}-say`} onChange={(event) => setChosen(event.currentTarget.value)}>
        <option value="">choose</option>
        {options.map(({ value, words }) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
      <p class="say bad" id={`${id}-say`} role="status">
        {missing ? "Choose one first." : ""}
      </p>
      <button type="submit" class="btn">
        {button}
        <span class="vh">: {label}</span>
      </button>
    </form>
  );
}
