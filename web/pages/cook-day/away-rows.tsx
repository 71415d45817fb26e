/** When a cook is away on the day: from, until, what for. */
import { FormField } from "../../parts/form-field.tsx";
import { useFocusLater } from "../../parts/focus-later.ts";
import { emptyAway, type AwayFields } from "./day-frame.ts";

interface AwayRowsProps {
  readonly rows: readonly AwayFields[];
  readonly onChange: (rows: AwayFields[]) => void;
  readonly badOf: (field: string) => { readonly wrong: string } | null;
}

export function AwayRows({ rows, onChange, badOf }: AwayRowsProps) {
  const focusLater = useFocusLater();
  const set = (index: number, change: Partial<AwayFields>): void => onChange(rows.map((row, i) => (i === index ? { ...row, ...change } : row)));
  const field = (row: AwayFields, i: number, name: keyof AwayFields, label: string) => (
    <FormField id={`away-${i}-${name}`} label={label} value={row[name]} onInput={(value) => set(i, { [name]: value })} bad={badOf(`away-${i}-${name}`)} />
  );
  return (
    <fieldset class="away">
      <legend class="label">Times away: no step that needs hands runs through them</legend>
      {rows.map((row, i) => (
        <div class="away-row" key={i}>
          {field(row, i, "from", "Away from")}
          {field(row, i, "to", "Until")}
          {field(row, i, "why", "What for (optional)")}
          <button
            type="button"
            class="btn word"
            onClick={() => {
              focusLater(`away-${i}-from`, "add-away");
              onChange(rows.filter((_, at) => at !== i));
            }}
          >
            Remove<span class="vh"> the time away from {row.from || "then"}</span>
          </button>
        </div>
      ))}
      <button
        type="button"
        class="btn word"
        id="add-away"
        onClick={() => {
          focusLater(`away-${rows.length}-from`);
          onChange([...rows, emptyAway]);
        }}
      >
        Add a time away
      </button>
    </fieldset>
  );
}
