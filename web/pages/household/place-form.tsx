/** Place, people and kitchen: one form, one save. */
import { useState } from "preact/hooks";
import { WEEK_STARTS, type Household } from "#shared/contracts/household.ts";
import { Choice, FormField } from "../../parts/form-field.tsx";
import { leadFor } from "../../parts/field-problem.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { fieldsOf, LABELS, readHousehold, type HouseholdFields } from "./household-form.ts";
import { saveHousehold, type Attempt } from "./save-household.ts";

interface PlaceFormProps {
  readonly home: Household;
  readonly again: () => Promise<void>;
}

type TextField = Exclude<keyof HouseholdFields, "weekStart" | "units">;

export function PlaceForm({ home, again }: PlaceFormProps) {
  const [fields, setFields] = useState(() => fieldsOf(home, Intl.DateTimeFormat().resolvedOptions().timeZone));
  const [attempt, setAttempt] = useState<Attempt | null>(null);
  const [done, setDone] = useState("");
  const set = (change: Partial<HouseholdFields>): void => {
    setDone("");
    setFields((before) => ({ ...before, ...change }));
  };
  const fail = (failed: Omit<Attempt, "n">): void => setAttempt({ ...failed, n: (attempt?.n ?? 0) + 1 });
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    const read = readHousehold(fields, home.eatsFrom === "household" ? home.eats : null);
    if (!read.ok) return fail({ lead: leadFor(read.faults.length, "the household"), faults: read.faults });
    const failed = await saveHousehold(read.body);
    if (failed) return fail(failed);
    setAttempt(null);
    setDone("The household is saved.");
    await again();
  };
  const bad = (name: string) => {
    const fault = attempt?.faults.find(({ field }) => field === name);
    return fault ? { wrong: fault.text } : null;
  };
  const text = (name: TextField, say?: string, mode: "text" | "decimal" | "numeric" = "decimal") => (
    <FormField id={name} label={LABELS[name]} value={fields[name]} onInput={(value) => set({ [name]: value })} inputMode={mode} say={say} bad={bad(name)} />
  );
  return (
    <form class="sec" onSubmit={(event) => void save(event)} noValidate>
      <h2>Place and people</h2>
      {attempt && <ProblemNote key={attempt.n} lead={attempt.lead} faults={attempt.faults} />}
      {text("name", undefined, "text")}
      <div class="form-pair">
        {text("latitude", "Degrees north, such as 52.1; south with a minus.")}
        {text("longitude", "Degrees east, such as 5.2; west with a minus.")}
      </div>
      <div class="form-pair">
        {text("altitudeM", "Decides canning times.")}
        {text("zone", "Such as Europe/Amsterdam.", "text")}
      </div>
      <div class="form-pair">
        {text("people", undefined, "numeric")}
        {text("glutGrams", "From so much over in a week we call it a glut.", "numeric")}
      </div>
      <Choice name="weekStart" legend="The week begins on" chosen={fields.weekStart} onChoose={(weekStart) => set({ weekStart })} options={WEEK_STARTS.map((value) => ({ value, words: capitalised(value) }))} />
      <Choice
        name="units"
        legend="We cook in"
        chosen={fields.units}
        onChoose={(units) => set({ units })}
        options={[
          { value: "metric", words: "Grams and litres" },
          { value: "us", words: "US cups" },
          { value: "imperial", words: "Pounds and pints" },
        ]}
      />
      <h3 class="head">Kitchen</h3>
      <div class="form-pair">
        {text("cooks", undefined, "numeric")}
        {text("burners", undefined, "numeric")}
      </div>
      <div class="form-pair">
        {text("ovens", "An oven holds one heat at a time.", "numeric")}
        {text("trays", undefined, "numeric")}
      </div>
      <div class="form-pair">
        {text("preheatMin", undefined, "numeric")}
        {text("changeMin", "From one heat to another.", "numeric")}
      </div>
      <div class="form-pair">
        {text("pots", undefined, "numeric")}
        {text("sinks", "For cooling in cold water.", "numeric")}
      </div>
      <p class="acts">
        <button type="submit" class="btn main">
          Save household
        </button>
        <span role="status">{done}</span>
      </p>
    </form>
  );
}

const capitalised = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
