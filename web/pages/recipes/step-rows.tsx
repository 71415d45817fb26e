/** The steps: hands first, then what runs by itself; what each needs and what must be over before it. */
import { FormField } from "../../parts/form-field.tsx";
import { useFocusLater } from "../../parts/focus-later.ts";
import type { RecipeFields, StepFields } from "./recipe-form.ts";
import { needsWords } from "./recipe-words.ts";
import { movedStep, withoutStep, withStep } from "./step-numbers.ts";

type BadOf = (field: string) => { readonly wrong: string } | null;
type SayOf = (field: string) => string | undefined;

interface StepRowsProps {
  readonly fields: RecipeFields;
  readonly onChange: (fields: RecipeFields) => void;
  readonly badOf: BadOf;
  readonly sayOf: SayOf;
}

export function StepRows({ fields, onChange, badOf, sayOf }: StepRowsProps) {
  const focusLater = useFocusLater();
  const { steps } = fields;
  const set = (index: number, change: Partial<StepFields>): void => onChange({ ...fields, steps: steps.map((row, i) => (i === index ? { ...row, ...change } : row)) });
  const move = (index: number, by: -1 | 1): void => {
    // at the end of the list the button that was pressed goes
    focusLater(index + by === 0 ? "step-0-later" : index + by === steps.length - 1 ? `step-${index + by}-earlier` : `step-${index + by}-${by < 0 ? "earlier" : "later"}`);
    onChange(movedStep(fields, index, by));
  };
  const remove = (index: number): void => {
    focusLater(`step-${index}-text`, "add-step");
    onChange(withoutStep(fields, index));
  };
  const add = (): void => {
    focusLater(`step-${steps.length}-text`);
    onChange(withStep(fields));
  };
  return (
    <section class="sec" aria-labelledby="steps-h">
      <h2 id="steps-h">Steps</h2>
      <p class="under">A step is hands first, then what runs by itself; where it needs hands again, write another step. Minutes by itself may be a range: 35–50.</p>
      {steps.map((row, i) => (
        <fieldset class="edit-row" key={row.id}>
          <legend class="what">Step {i + 1}</legend>
          <StepLines row={row} index={i} set={(change) => set(i, change)} badOf={badOf} sayOf={sayOf} />
          <p class="acts">
            {i > 0 && (
              <button type="button" class="btn word" id={`step-${i}-earlier`} onClick={() => move(i, -1)}>
                Earlier<span class="vh">: step {i + 1}</span>
              </button>
            )}
            {i < steps.length - 1 && (
              <button type="button" class="btn word" id={`step-${i}-later`} onClick={() => move(i, 1)}>
                Later<span class="vh">: step {i + 1}</span>
              </button>
            )}
            <button type="button" class="btn word" onClick={() => remove(i)}>
              Remove<span class="vh"> step {i + 1}</span>
            </button>
          </p>
        </fieldset>
      ))}
      <p class="acts">
        <button type="button" class="btn" id="add-step" onClick={add}>
          Add a step
        </button>
      </p>
    </section>
  );
}

interface StepLinesProps {
  readonly row: StepFields;
  readonly index: number;
  readonly set: (change: Partial<StepFields>) => void;
  readonly badOf: BadOf;
  readonly sayOf: SayOf;
}

type Line = Exclude<keyof StepFields, "id" | "kept">;
const NEEDS = [
  ["ovenC", "oven", "Oven, °C"],
  ["trays", "trays", "Trays in it"],
  ["burners", "burners", "Burners"],
  ["pots", "pots", "Large pots"],
  ["sinks", "sinks", "Sinks"],
  ["of", "of", "Pieces to do"],
  ["holds", "holds", "At a time"],
] as const;

function StepLines({ row, index, set, badOf, sayOf }: StepLinesProps) {
  const line = (name: Line, key: string, label: string, mode: "numeric" | "text" = "numeric") => (
    <FormField id={`step-${index}-${key}`} label={label} value={row[name]} onInput={(value) => set({ [name]: value })} say={sayOf(`step-${index}-${key}`)} bad={badOf(`step-${index}-${key}`)} inputMode={mode} />
  );
  return (
    <>
      <FormField id={`step-${index}-text`} label="What is done" value={row.text} onInput={(text) => set({ text })} say={sayOf(`step-${index}-text`)} bad={badOf(`step-${index}-text`)} lines={2} />
      <div class="short">
        {line("handsOn", "on", "Hands, min")}
        {line("handsOff", "off", "By itself, min", "text")}
        {line("after", "after", "After steps (1, 3)", "text")}
        {line("within", "within", "May wait, min", "text")}
      </div>
      <details open={NEEDS.some(([, key]) => badOf(`step-${index}-${key}`) ?? sayOf(`step-${index}-${key}`)) || undefined}>
        <summary class="word">{needsWords(row)}</summary>
        <div class="short">{NEEDS.map(([name, key, label]) => line(name, key, label))}</div>
        <p class="say">Pieces and how many go at a time make loads: 24 and 8 are three loads. Leave both empty for what is done once, however many batches.</p>
      </details>
    </>
  );
}
