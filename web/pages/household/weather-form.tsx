/** The weather that forecasts rest on: a file of daily figures, or twelve monthly means typed by hand. */
import { useState } from "preact/hooks";
import type { WeatherHeld } from "#shared/contracts/weather.ts";
import { putNormals, putWeatherDays } from "../../api/calls.ts";
import { asProblem } from "../../api/problem.ts";
import { count, MONTHS } from "../../format.ts";
import { leadFor, type FieldProblem } from "../../parts/field-problem.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { monthFields, readNormals, type MonthFields } from "./normals-form.ts";
import type { Attempt } from "./save-household.ts";
import { rowFaults, weatherSentence } from "./words.ts";

interface WeatherFormProps {
  readonly held: WeatherHeld;
  readonly again: () => Promise<void>;
}

export function WeatherForm({ held, again }: WeatherFormProps) {
  return (
    <section class="sec" aria-labelledby="weather-h">
      <h2 id="weather-h">Weather</h2>
      <p class="under">{weatherSentence(held)}</p>
      {held.attribution && <p class="say">{held.attribution}</p>}
      <DailyFile again={again} />
      <MonthlyMeans held={held} again={again} />
    </section>
  );
}

function DailyFile({ again }: { readonly again: () => Promise<void> }) {
  const [failed, setFailed] = useState<{ readonly n: number; readonly lead: string; readonly rows: readonly string[] } | null>(null);
  const [done, setDone] = useState("");
  const load = async (input: HTMLInputElement): Promise<void> => {
    const file = input.files?.[0];
    if (!file) return;
    setDone("Reading the file.");
    try {
      const { days } = await putWeatherDays(await file.text());
      setFailed(null);
      setDone(`${count(days, "day is", "days are")} stored.`);
      await again();
    } catch (thrown) {
      const problem = asProblem(thrown);
      setDone("");
      setFailed((before) => ({ n: (before?.n ?? 0) + 1, lead: problem.message, rows: rowFaults(problem.fields) }));
    }
    input.value = "";
  };
  return (
    <>
      {failed && <ProblemNote key={failed.n} lead={failed.lead} />}
      <div class="form-field daily-file">
        <label for="daily-file">A file of daily figures, with the columns date, tmax_c and tmin_c</label>
        <input class="field" id="daily-file" type="file" accept=".csv,text/csv" aria-describedby="daily-file-say" aria-invalid={failed ? "true" : undefined} onChange={(event) => void load(event.currentTarget)} />
        <div class={`say${failed ? " bad" : ""}`} id="daily-file-say">
          {failed && failed.rows.length > 0 ? (
            <ul>
              {failed.rows.map((row) => (
                <li key={row}>{row}</li>
              ))}
            </ul>
          ) : (
            "Comma-separated, °C, one row a day, up to 1 MB at a time. Days already there are replaced; with one bad row nothing is."
          )}
        </div>
      </div>
      <p role="status">{done}</p>
    </>
  );
}

function MonthlyMeans({ held, again }: WeatherFormProps) {
  const [months, setMonths] = useState(() => monthFields(held.normals));
  const [attempt, setAttempt] = useState<Attempt | null>(null);
  const [done, setDone] = useState("");
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    const read = readNormals(months);
    const n = (attempt?.n ?? 0) + 1;
    if (!read.ok) return setAttempt({ n, lead: leadFor(read.faults.length, "this table"), faults: read.faults });
    try {
      await putNormals(read.body);
      setAttempt(null);
      setDone("The monthly means are saved.");
      await again();
    } catch (thrown) {
      setAttempt({ n, lead: asProblem(thrown).message, faults: [] });
    }
  };
  const set = (month: number, change: Partial<MonthFields>): void => {
    setDone("");
    setMonths((before) => before.map((fields, i) => (i === month ? { ...fields, ...change } : fields)));
  };
  const faultAt = (id: string) => attempt?.faults.find(({ field }) => field === id);
  const cell = (month: number, which: keyof MonthFields, words: string) => {
    const id = `${which}-${month}`;
    const bad = faultAt(id) !== undefined;
    return (
      <td>
        <input
          class="field temp"
          id={id}
          aria-label={`${MONTHS[month]}, ${words}, °C`}
          aria-invalid={bad ? "true" : undefined}
          aria-describedby={bad ? `${id}-say` : undefined}
          inputMode="text"
          autocomplete="off"
          value={months[month]?.[which] ?? ""}
          onInput={(event) => set(month, { [which]: event.currentTarget.value })}
        />
      </td>
    );
  };
  return (
    <details class="means" open={held.days === 0}>
      <summary class="word">Monthly means, typed by hand</summary>
      <form onSubmit={(event) => void save(event)} noValidate>
        {attempt && <ProblemNote key={attempt.n} lead={attempt.lead} faults={fewOf(attempt.faults)} />}
        <table>
          <thead>
            <tr>
              <th scope="col">Month</th>
              <th scope="col">Mean maximum, °C</th>
              <th scope="col">Mean minimum, °C</th>
            </tr>
          </thead>
          <tbody>
            {MONTHS.map((name, month) => (
              <tr key={name}>
                <th scope="row">
                  {name}
                  {[`tmaxC-${month}`, `tminC-${month}`].map((id) => {
                    const fault = faultAt(id);
                    return (
                      fault && (
                        <p class="say bad" key={id} id={`${id}-say`}>
                          {fault.text.slice(fault.text.indexOf(": ") + 2)}
                        </p>
                      )
                    );
                  })}
                </th>
                {cell(month, "tmaxC", "mean maximum")}
                {cell(month, "tminC", "mean minimum")}
              </tr>
            ))}
          </tbody>
        </table>
        <p class="acts">
          <button type="submit" class="btn">
            Save monthly means
          </button>
          <span role="status">{done}</span>
        </p>
      </form>
    </details>
  );
}

const SHOWN_FAULTS = 6;

/** The first few with links; the others are marked in the table. */
function fewOf(faults: readonly FieldProblem[]): FieldProblem[] {
  const next = faults[SHOWN_FAULTS];
  return next ? [...faults.slice(0, SHOWN_FAULTS), { field: next.field, text: `and ${faults.length - SHOWN_FAULTS} more, marked in the table` }] : [...faults];
}
