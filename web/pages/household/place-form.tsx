/** Place, people and kitchen: one form, one save. */
import { useState } from "preact/hooks";
import { WEEK_STARTS, type Household } from "#shared/contracts/household.ts";
import { capital } from "../../format.ts";
import { Conflict } from "../../parts/conflict.tsx";
import { leadFor } from "../../parts/field-problem.ts";
import { Choice, FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { fieldsOf, LABELS, numberIn, readHousehold, type HouseholdFields } from "./household-form.ts";
import { saveHousehold, type Attempt } from "./save-household.ts";

interface PlaceFormProps {
  readonly home: Household;
  readonly again: () => Promise<void>;
}

type TextField = Exclude<keyof HouseholdFields, "weekStart" | "units">;

const browserZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;
/** Not every browser can list them; the field takes any. */
const zones = (): readonly string[] => ("supportedValuesOf" in Intl ? Intl.supportedValuesOf("timeZone") : []);

export function PlaceForm({ home, again }: PlaceFormProps) {
  const [fields, setFields] = useState(() => fieldsOf(home, browserZone()));
  const [attempt, setAttempt] = useState<Attempt | null>(null);
  const [theirs, setTheirs] = useState<Household | null>(null);
  const [done, setDone] = useState("");
  const [busy, setBusy] = useState(false);
  const set = (change: Partial<HouseholdFields>): void => {
    setDone("");
    setFields((before) => ({ ...before, ...change }));
  };
  const fail = (failed: Omit<Attempt, "n">): void => setAttempt((before) => ({ ...failed, n: (before?.n ?? 0) + 1 }));
  const send = async (stored: Household): Promise<void> => {
    const read = readHousehold(fields, stored.eatsFrom === "household" ? stored.eats : null, stored);
    setTheirs(null);
    if (!read.ok) return fail({ lead: leadFor(read.faults.length, "the household"), faults: read.faults });
    const saved = await saveHousehold(read.body);
    if (saved.kind === "refused") return fail(saved);
    setAttempt(null);
    if (saved.kind === "conflict") return setTheirs(saved.theirs);
    setDone("The household is saved.");
    await again();
  };
  const save = async (stored: Household): Promise<void> => {
    if (busy) return;
    setBusy(true);
    await send(stored);
    setBusy(false);
  };
  const takeTheirs = async (now: Household): Promise<void> => {
    setFields(fieldsOf(now, browserZone()));
    setTheirs(null);
    await again();
  };
  const bad = (name: string) => {
    const fault = attempt?.faults.find(({ field }) => field === name);
    return fault ? { wrong: fault.text } : null;
  };
  const text = (name: TextField, say?: string, mode: "text" | "decimal" | "numeric" = "numeric", list?: string) => (
    <FormField id={name} label={LABELS[name]} value={fields[name]} onInput={(value) => set({ [name]: value })} inputMode={mode} say={say} bad={bad(name)} {...(list === undefined ? {} : { list })} />
  );
  return (
    <form
      class="sec household-form"
      noValidate
      aria-labelledby="place-h"
      onSubmit={(event) => {
        event.preventDefault();
        void save(home);
      }}
    >
      <h2 id="place-h">Place and people</h2>
      {attempt && <ProblemNote key={attempt.n} lead={attempt.lead} faults={attempt.faults} />}
      {theirs && <Conflict what="the household" rows={differences(fields, fieldsOf(theirs, browserZone()))} keepMine={() => void save(theirs)} keepTheirs={() => void takeTheirs(theirs)} />}
      {text("name", undefined, "text")}
      <div class="form-pair">
        {text("latitude", "Degrees north, such as 52.1; south with a minus.", "text")}
        {text("longitude", "Degrees east, such as 5.2; west with a minus.", "text")}
        {text("altitudeM", "Decides canning times.", "text")}
        {text("zone", "Such as Europe/Amsterdam.", "text", "zones")}
        {text("people")}
        {text("glutGrams")}
      </div>
      <datalist id="zones">
        {zones().map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
      <Choice name="weekStart" legend={LABELS["weekStart"] ?? ""} chosen={fields.weekStart} onChoose={(weekStart) => set({ weekStart })} options={WEEK_STARTS.map((value) => ({ value, words: capital(value) }))} />
      <Choice
        name="units"
        legend={LABELS["units"] ?? ""}
        chosen={fields.units}
        onChoose={(units) => set({ units })}
        options={[
          { value: "metric", words: "Grams and litres" },
          { value: "us", words: "US cups" },
          { value: "imperial", words: "Pounds and pints" },
        ]}
      />
      <h3 class="head">Kitchen</h3>
      <p class="say">What a cook day starts from; each day can say otherwise. An oven holds one heat at a time; a sink is for cooling in cold water.</p>
      <div class="form-pair small">
        {text("cooks")}
        {text("burners")}
        {text("pots")}
        {text("sinks")}
        {text("ovens")}
        {text("trays")}
        {text("preheatMin")}
        {text("changeMin")}
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

function differences(mine: HouseholdFields, theirs: HouseholdFields): { name: string; mine: string; theirs: string }[] {
  const keys = Object.keys(mine) as (keyof HouseholdFields)[];
  // 52,1 and 52.1 are one figure
  return keys.filter((key) => numberIn(mine[key]) !== numberIn(theirs[key])).map((key) => ({ name: LABELS[key] ?? key, mine: mine[key], theirs: theirs[key] }));
}
