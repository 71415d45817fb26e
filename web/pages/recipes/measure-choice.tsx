/** Whose cups, spoons and pints the lines mean: they differ by up to a third. */
import { MEASURE_WORDS, type RecipeFields } from "./recipe-form.ts";

interface MeasureChoiceProps {
  readonly chosen: RecipeFields["measures"];
  readonly onChoose: (measures: RecipeFields["measures"]) => void;
  readonly say: string | undefined;
}

export function MeasureChoice({ chosen, onChoose, say }: MeasureChoiceProps) {
  return (
    <div class="form-field">
      <label for="measures">Cups and spoons</label>
      <select class="field" id="measures" value={chosen} aria-describedby={say ? "measures-say" : undefined} onChange={(event) => onChoose(event.currentTarget.value as RecipeFields["measures"])}>
        <option value="">Our own</option>
        {Object.entries(MEASURE_WORDS).map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
      {say && (
        <p class="say" id="measures-say">
          {say}
        </p>
      )}
    </div>
  );
}
