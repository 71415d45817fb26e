/** What the household eats fresh in a week of each crop: the book's figures, or its own. */
import { useState } from "preact/hooks";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Household } from "#shared/contracts/household.ts";
import { leadFor } from "../../parts/field-problem.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { fieldsOf, numberIn, readHousehold } from "./household-form.ts";
import { saveHousehold, type Attempt } from "./save-household.ts";

interface EatsFormProps {
  readonly home: Household;
  readonly book: readonly Crop[];
  readonly again: () => Promise<void>;
}

export function EatsForm({ home, book, again }: EatsFormProps) {
  const names = new Map(book.map(({ crop, name }) => [crop, name]));
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [attempt, setAttempt] = useState<Attempt | null>(null);
  const [done, setDone] = useState("");
  const isBad = (crop: string): boolean => attempt?.faults.some(({ field }) => field === `eats-${crop}`) ?? false;
  const gramsOf = (crop: string, grams: number): string => typed[crop] ?? String(grams);
  const send = async (eats: Household["eats"] | null, words: string): Promise<void> => {
    const read = readHousehold(fieldsOf(home, home.zone), eats, home);
    const n = (attempt?.n ?? 0) + 1;
    if (!read.ok) return setAttempt({ n, lead: "Save the place of the household first, then what it eats.", faults: [] });
    const saved = await saveHousehold(read.body);
    if (saved.kind === "refused") return setAttempt({ ...saved, n });
    if (saved.kind === "conflict") {
      // what somebody else changed comes into the page; what was typed here stays
      await again();
      return setAttempt({ n, lead: "Somebody else changed the household meanwhile. What you typed still stands here; save it again.", faults: [] });
    }
    setAttempt(null);
    setTyped({});
    setDone(words);
    await again();
  };
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    const rows = home.eats.map(({ crop, gramsPerWeek }) => ({ crop, gramsPerWeek: numberIn(gramsOf(crop, gramsPerWeek)) }));
    const faults = rows.filter(({ gramsPerWeek }) => !Number.isInteger(gramsPerWeek) || gramsPerWeek < 0).map(({ crop }) => ({ field: `eats-${crop}`, text: `${names.get(crop) ?? crop}: whole grams, 0 for none` }));
    if (faults.length > 0) return setAttempt({ n: (attempt?.n ?? 0) + 1, lead: leadFor(faults.length, "what you eat"), faults });
    await send(rows, "What you eat is saved.");
  };
  return (
    <details class="sec eats">
      <summary class="word">What we eat fresh in a week</summary>
      <form onSubmit={(event) => void save(event)} noValidate>
        <p class="under">
          {home.eatsFrom === "book"
            ? "These are the book’s figures for so many people, two to four portions of 80 g each a week while a crop is in season. Change what does not fit."
            : "These are your own figures."}
        </p>
        {attempt && <ProblemNote key={attempt.n} lead={attempt.lead} faults={attempt.faults} />}
        <ul class="eats-list">
          {home.eats.map(({ crop, gramsPerWeek }) => (
            <li key={crop}>
              <label for={`eats-${crop}`}>{names.get(crop) ?? crop}, grams</label>
              <input
                class="field"
                id={`eats-${crop}`}
                inputMode="numeric"
                autocomplete="off"
                aria-invalid={isBad(crop) ? "true" : undefined}
                aria-describedby={isBad(crop) ? `eats-${crop}-say` : undefined}
                value={gramsOf(crop, gramsPerWeek)}
                onInput={(event) => {
                  setDone("");
                  setTyped({ ...typed, [crop]: event.currentTarget.value });
                }}
              />
              {isBad(crop) && (
                <p class="say bad" id={`eats-${crop}-say`}>
                  <b>Whole grams, 0 for none.</b>
                </p>
              )}
            </li>
          ))}
        </ul>
        <p class="acts">
          <button type="submit" class="btn">
            Save what we eat
          </button>
          {home.eatsFrom === "household" && (
            <button type="button" class="btn word" onClick={() => void send(null, "The book’s figures are back.")}>
              Back to the book’s figures
            </button>
          )}
          <span role="status">{done}</span>
        </p>
      </form>
    </details>
  );
}
