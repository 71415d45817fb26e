/** The steps: hands first, then what runs by itself; what each needs and what must be over before it. */
import { FormField } from "../../parts/form-field.tsx";
import { emptyStep, type StepFields } from "./recipe-form.ts";

interface StepRowsProps {
  readonly rows: readonly StepFields[];
  readonly onChange: (rows: StepFields[]) => void;
  readonly badOf: (field: string) => { readonly wrong: string } | null;
}

export function StepRows({ rows, onChange, badOf }: StepRowsProps) {
  const set = (index: number, change: Partial<StepFields>): void => onChange(rows.map((row, i) => (i === index ? { ...row, ...change } : row)));
  const add = (): void => {
    const taken = new Set(rows.map((row) => row.id));
    let number = rows.length + 1;
    while (taken.has(`step-${number}`)) number++;
    onChange([...rows, { ...emptyStep(rows.length + 1), id: `step-${number}` }]);
  };
  return (
    <section class="sec">
      <h2>Steps</h2>
      <p class="under">A step is hands first, then what runs by itself. Where it needs hands again, write another step.</p>
      {rows.map((row, i) => (
        <StepRow key={row.id} row={row} index={i} set={(change) => set(i, change)} remove={() => onChange(without(rows, i))} badOf={badOf} />
      ))}
      <p class="acts">
        <button type="button" class="btn" onClick={add}>
          Add a step
        </button>
      </p>
    </section>
  );
}

interface StepRowProps {
  readonly row: StepFields;
  readonly index: number;
  readonly set: (change: Partial<StepFields>) => void;
  readonly remove: () => void;
  readonly badOf: StepRowsProps["badOf"];
}

function StepRow({ row, index, set, remove, badOf }: StepRowProps) {
  const number = (name: keyof StepFields & string, key: string, label: string, say?: string) => (
    <FormField id={`step-${index}-${key}`} label={label} value={String(row[name] ?? "")} onInput={(value) => set({ [name]: value })} say={say} bad={badOf(`step-${index}-${key}`)} />
  );
  return (
    <fieldset class="edit-row">
      <legend class="what">Step {index + 1}</legend>
      <FormField id={`step-${index}-text`} label="What is done" value={row.text} onInput={(text) => set({ text })} bad={badOf(`step-${index}-text`)} />
      <div class="short">
        {number("handsOn", "on", "Hands, min")}
        {number("handsOff", "off", "By itself, min", "40, or 35–50")}
        {number("after", "after", "After steps", "1, or 1, 3; empty to start any time")}
        {number("within", "within", "May wait, min", "Empty for as long as you like")}
      </div>
      <div class="short">
        {number("ovenC", "oven", "Oven, °C")}
        {number("trays", "trays", "Trays")}
        {number("burners", "burners", "Burners")}
        {number("sinks", "sinks", "Sinks")}
      </div>
      <p class="acts">
        <button type="button" class="btn word" onClick={remove}>
          Remove<span class="vh"> step {index + 1}</span>
        </button>
      </p>
    </fieldset>
  );
}

/** Takes a step out and renumbers what the others say they come after. */
function without(rows: readonly StepFields[], gone: number): StepFields[] {
  const renumbered = (text: string): string =>
    text
      .split(/[\s,]+/)
      .filter((part) => part !== "" && Number(part) !== gone + 1)
      .map((part) => (Number(part) > gone + 1 ? String(Number(part) - 1) : part))
      .join(", ");
  return rows.filter((_, i) => i !== gone).map((row) => ({ ...row, after: renumbered(row.after) }));
}
