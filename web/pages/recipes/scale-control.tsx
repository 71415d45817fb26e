/** For how much: a few amounts to press; behind a word another amount, what is at hand, another dish, the pot it must fit into. */
import { useState } from "preact/hooks";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { Choice, FormField } from "../../parts/form-field.tsx";
import { setQuery } from "../../router.ts";
import { inAddress, NOT_SCALED, readyAmounts, type ScaleFields, type ScaleName } from "./scale-form.ts";

interface ScaleControlProps {
  readonly recipe: Recipe;
  readonly book: readonly Crop[];
  readonly fields: ScaleFields;
  readonly faults: readonly FieldProblem[];
}

export function ScaleControl({ recipe, book, fields, faults }: ScaleControlProps) {
  const only = (change: Partial<ScaleFields>): void => setQuery(inAddress({ ...NOT_SCALED, pot: fields.pot, ...change }));
  const otherwise = [fields.yield, fields.hand, fields.from, fields.to].some((text) => text !== "");
  return (
    <div class="scale no-print">
      <Choice name="batches" legend="How much" chosen={otherwise ? null : fields.batches || "1"} onChoose={(batches) => only({ batches: batches === "1" ? "" : batches })} options={readyAmounts(recipe)} />
      <details open={otherwise || fields.pot !== "" || faults.length > 0 || undefined}>
        <summary class="word">Another amount, what is at hand, our own dish or pot</summary>
        <Others key={JSON.stringify(fields)} recipe={recipe} book={book} fields={fields} faults={faults} only={only} />
      </details>
    </div>
  );
}

interface OthersProps extends ScaleControlProps {
  readonly only: (change: Partial<ScaleFields>) => void;
}

function Others({ recipe, book, fields, faults, only }: OthersProps) {
  const used = recipe.uses.filter(({ grams }) => grams > 0).map(({ crop }) => ({ crop, name: book.find((one) => one.crop === crop)?.name ?? crop }));
  const [typed, setTyped] = useState<ScaleFields>(() => ({ ...fields, crop: fields.crop || (used[0]?.crop ?? "") }));
  const bad = (name: string): { wrong: string } | null => {
    const fault = faults.find(({ field }) => field === name);
    return fault ? { wrong: fault.text } : null;
  };
  const field = (id: ScaleName, label: string, say?: string, mode: "decimal" | "text" = "text") => (
    <FormField id={id} label={label} value={typed[id]} onInput={(value) => setTyped({ ...typed, [id]: value })} say={say} bad={bad(id)} inputMode={mode} />
  );
  const form = (words: string, change: () => Partial<ScaleFields>, content: preact.ComponentChildren) => (
    <form
      class="scale-row"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        only(change());
      }}
    >
      {content}
      <button type="submit" class="btn">
        {words}
      </button>
    </form>
  );
  return (
    <>
      {form("Reckon the amount", () => ({ yield: typed.yield }), field("yield", `To make, ${recipe.makes.unit}`, undefined, "decimal"))}
      {used.length > 0 &&
        form("Reckon from this", () => ({ hand: typed.hand, crop: typed.crop }), (
          <>
            {field("hand", "At hand, as picked", "Such as 3.4 kg")}
            <div class="form-field">
              <label for="crop">Of</label>
              <select class="field" id="crop" value={typed.crop} onChange={(event) => setTyped({ ...typed, crop: event.currentTarget.value })}>
                {used.map(({ crop, name }) => (
                  <option key={crop} value={crop}>
                    {name}
                  </option>
                ))}
              </select>
            </div>
          </>
        ))}
      {recipe.process === undefined &&
        form("Change the dish", () => ({ from: typed.from, to: typed.to }), (
          <>
            {field("from", "The dish it is written for", "Such as 24 cm round")}
            {field("to", "Our dish", "Such as 20 × 34 cm")}
          </>
        ))}
      {form("See whether it fits", () => ({ batches: fields.batches, yield: fields.yield, hand: fields.hand, crop: fields.crop, from: fields.from, to: fields.to, pot: typed.pot }), field("pot", "Largest pot, litres", "Such as 5", "decimal"))}
    </>
  );
}
