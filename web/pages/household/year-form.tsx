/** What the season's plan has to know of the household: hours in the kitchen, days away, what is never eaten. */
import { useState } from "preact/hooks";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Household } from "#shared/contracts/household.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { leadFor } from "../../parts/field-problem.ts";
import { useFocusLater } from "../../parts/focus-later.ts";
import { FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { fieldsOf, readHousehold } from "./household-form.ts";
import { saveHousehold, type Attempt } from "./save-household.ts";
import { readYear, yearFieldsOf, type AwayFields, type YearFields } from "./year-read.ts";

interface YearFormProps {
  readonly home: Household;
  readonly book: readonly Crop[];
  readonly today: LocalDate;
  readonly again: () => Promise<void>;
}

export function YearForm({ home, book, today, again }: YearFormProps) {
  const [fields, setFields] = useState<YearFields>(() => yearFieldsOf(home, book));
  const [attempt, setAttempt] = useState<Attempt | null>(null);
  const [done, setDone] = useState("");
  const [busy, setBusy] = useState(false);
  const focusLater = useFocusLater();
  const fail = (failed: Omit<Attempt, "n">): void => setAttempt((before) => ({ ...failed, n: (before?.n ?? 0) + 1 }));
  const set = (change: Partial<YearFields>): void => {
    setDone("");
    setFields({ ...fields, ...change });
  };
  const send = async (): Promise<void> => {
    const read = readYear(fields, book, today);
    if (!read.ok) return fail({ lead: leadFor(read.faults.length, "this"), faults: read.faults });
    const whole = readHousehold(fieldsOf(home, home.zone), home.eatsFrom === "household" ? home.eats : null, { kitchen: home.kitchen, ...read.part });
    if (!whole.ok) return fail({ lead: "Save the place of the household first, then this.", faults: [] });
    const saved = await saveHousehold(whole.body);
    if (saved.kind === "refused") return fail(saved);
    if (saved.kind === "conflict") {
      // what somebody else changed comes into the page; what was typed here stays
      await again();
      return fail({ lead: "Somebody else changed the household meanwhile. What you typed still stands here; save it again.", faults: [] });
    }
    setAttempt(null);
    setDone("Hours, days away and what is never eaten are saved.");
    await again();
  };
  const bad = (field: string) => {
    const fault = attempt?.faults.find((one) => one.field === field);
    return fault ? { wrong: fault.text } : null;
  };
  const setAway = (i: number, change: Partial<AwayFields>): void => set({ away: fields.away.map((row, at) => (at === i ? { ...row, ...change } : row)) });
  return (
    <form
      class="sec household-form"
      noValidate
      aria-labelledby="year-h"
      onSubmit={(event) => {
        event.preventDefault();
        if (busy) return;
        setBusy(true);
        void send().finally(() => setBusy(false));
      }}
    >
      <h2 id="year-h">For the season’s plan</h2>
      {attempt && <ProblemNote key={attempt.n} lead={attempt.lead} faults={attempt.faults} />}
      <div class="form-pair">
        <FormField id="year-hours" label="Hours a week for cooking ahead and preserving (optional)" value={fields.hours} onInput={(hours) => set({ hours })} bad={bad("year-hours")} say="Hands only, such as 4 or 4 h 30." inputMode="decimal" />
        <FormField id="year-crops" label="Never eaten here (optional)" value={fields.crops} onInput={(crops) => set({ crops })} bad={bad("year-crops")} say="Crops, parted with semicolons: Kale; Beetroot" />
        <FormField id="year-allergens" label="Allergies (optional)" value={fields.allergens} onInput={(allergens) => set({ allergens })} bad={bad("year-allergens")} say="Words as your recipes state them, such as nuts; celery. Read every label yourself all the same." />
      </div>
      <h3 class="head">Away</h3>
      <ul class="away-rows">
        {fields.away.map((row, i) => (
          <li key={i} class="form-pair small">
            <FormField id={`year-first-${i}`} label="First day away" value={row.firstDay} onInput={(firstDay) => setAway(i, { firstDay })} bad={bad(`year-first-${i}`)} />
            <FormField id={`year-last-${i}`} label="Last day away" value={row.lastDay} onInput={(lastDay) => setAway(i, { lastDay })} bad={bad(`year-last-${i}`)} />
            <p>
              <button
                type="button"
                class="btn word"
                onClick={() => {
                  focusLater("year-away");
                  set({ away: fields.away.filter((_, at) => at !== i) });
                }}
              >
                Take these days off<span class="vh">: {row.firstDay}</span>
              </button>
            </p>
          </li>
        ))}
      </ul>
      <p class="acts">
        <button
          type="button"
          class="btn word"
          id="year-away"
          onClick={() => {
            focusLater(`year-first-${fields.away.length}`);
            set({ away: [...fields.away, { firstDay: "", lastDay: "" }] });
          }}
        >
          Write days away down
        </button>
      </p>
      <p class="acts">
        <button type="submit" class="btn">
          Save hours and days
        </button>
        <span role="status">{done}</span>
      </p>
    </form>
  );
}
