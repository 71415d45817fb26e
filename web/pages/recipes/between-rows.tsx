/** What runs over several steps: pots, burners and sinks that stay taken, and times that must not be longer, such as hot food that has to be cold. */
import type { ComponentChildren } from "preact";
import { FormField } from "../../parts/form-field.tsx";
import { useFocusLater } from "../../parts/focus-later.ts";
import { emptyHold, emptyLimit, type HoldFields, type LimitFields } from "./recipe-form.ts";

type BadOf = (field: string) => { readonly wrong: string } | null;

interface BetweenProps {
  readonly holds: readonly HoldFields[];
  readonly limits: readonly LimitFields[];
  readonly onChange: (change: { readonly holds?: HoldFields[]; readonly limits?: LimitFields[] }) => void;
  readonly badOf: BadOf;
}

const WHAT = [
  ["pots", "A large pot"],
  ["burners", "A burner"],
  ["sinks", "A sink"],
] as const;

export function BetweenRows({ holds, limits, onChange, badOf }: BetweenProps) {
  const setHold = (index: number, change: Partial<HoldFields>): void => onChange({ holds: holds.map((row, i) => (i === index ? { ...row, ...change } : row)) });
  const setLimit = (index: number, change: Partial<LimitFields>): void => onChange({ limits: limits.map((row, i) => (i === index ? { ...row, ...change } : row)) });
  return (
    <section class="sec" aria-labelledby="between-h">
      <h2 id="between-h">Over several steps</h2>
      <p class="under">A pot that stays full, a burner that stays on: from the start of one step to the end of another. Hot food that must be cold in time: at most so many minutes between two steps.</p>
      <Rows name="hold" rows={holds} add="Add a pot, burner or sink that stays taken" onAdd={() => onChange({ holds: [...holds, emptyHold] })} onRemove={(at) => onChange({ holds: holds.filter((_, i) => i !== at) })}>
        {(i) => {
          const row = holds[i] ?? emptyHold;
          return (
            <>
              <div class="form-field">
                <label for={`hold-${i}-what`}>What stays taken</label>
                <select class="field" id={`hold-${i}-what`} value={row.what} onChange={(event) => setHold(i, { what: event.currentTarget.value as HoldFields["what"] })}>
                  {WHAT.map(([value, words]) => (
                    <option key={value} value={value}>
                      {words}
                    </option>
                  ))}
                </select>
              </div>
              <FormField id={`hold-${i}-from`} label="From step" value={row.from} onInput={(from) => setHold(i, { from })} bad={badOf(`hold-${i}-from`)} inputMode="numeric" />
              <FormField id={`hold-${i}-to`} label="To the end of step" value={row.to} onInput={(to) => setHold(i, { to })} bad={badOf(`hold-${i}-to`)} inputMode="numeric" />
            </>
          );
        }}
      </Rows>
      <Rows name="limit" rows={limits} add="Add a time limit" onAdd={() => onChange({ limits: [...limits, emptyLimit] })} onRemove={(at) => onChange({ limits: limits.filter((_, i) => i !== at) })}>
        {(i) => {
          const row = limits[i] ?? emptyLimit;
          const line = (field: keyof LimitFields, label: string, mode: "numeric" | "text" = "numeric") => (
            <FormField id={`limit-${i}-${field}`} label={label} value={row[field]} onInput={(value) => setLimit(i, { [field]: value })} bad={badOf(`limit-${i}-${field}`)} inputMode={mode} />
          );
          return (
            <>
              {line("maxMin", "At most, min")}
              {line("from", "From the end of step")}
              {line("to", "To the start of step")}
              {line("why", "Because", "text")}
            </>
          );
        }}
      </Rows>
    </section>
  );
}

interface RowsProps {
  readonly name: "hold" | "limit";
  readonly rows: readonly unknown[];
  readonly add: string;
  readonly onAdd: () => void;
  readonly onRemove: (at: number) => void;
  readonly children: (index: number) => ComponentChildren;
}

function Rows({ name, rows, add, onAdd, onRemove, children }: RowsProps) {
  const focusLater = useFocusLater();
  const first = name === "hold" ? "what" : "maxMin";
  return (
    <>
      {rows.map((_, i) => (
        <div class={`edit-row ${name}-row`} key={i}>
          {children(i)}
          <button
            type="button"
            class="btn word"
            onClick={() => {
              focusLater(`${name}-${i}-${first}`, `add-${name}`);
              onRemove(i);
            }}
          >
            Remove<span class="vh">{name === "hold" ? ` what stays taken, ${i + 1}` : ` time limit ${i + 1}`}</span>
          </button>
        </div>
      ))}
      <p class="acts">
        <button
          type="button"
          class="btn"
          id={`add-${name}`}
          onClick={() => {
            focusLater(`${name}-${rows.length}-${first}`);
            onAdd();
          }}
        >
          {add}
        </button>
      </p>
    </>
  );
}
