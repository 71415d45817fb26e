/** Planning back from the table: the weeks in which a crop is wanted → when to sow it, how much, at what intervals. */
import { useState } from "preact/hooks";
import type { SowingAdvice } from "#shared/contracts/advice.ts";
import type { Crop } from "#shared/contracts/crops.ts";
import { weekOf } from "#shared/kernel/iso-week.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import * as calls from "../../api/calls.ts";
import { asProblem } from "../../api/problem.ts";
import { inOurUnits, shortDay } from "../../format.ts";
import { FormField } from "../../parts/form-field.tsx";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { got, wrong, type Typed } from "../../parts/typed.ts";
import { numberOf, readGrams } from "../../parts/typed-amount.ts";
import { readDay } from "../../parts/typed-day.ts";
import { inPounds } from "../../units.ts";
import { adviceSentence, firstPickWords, servesWords, sizeWords } from "./advice-words.ts";
import { failureOf, type Failure } from "./failure.ts";
import { findCrop } from "./find-crop.ts";

const FORM = "table";
const MOST_WEEKS = 53;

interface Wanted {
  readonly crop: string;
  readonly first: string;
  readonly weeks: string;
  readonly much: string;
}

interface Answered {
  readonly advice: SowingAdvice;
  readonly cropName: string;
}

export function SowForTable({ crops, today }: { readonly crops: readonly Crop[]; readonly today: LocalDate }) {
  const [wanted, setWanted] = useState<Wanted>(() => ({ crop: "", first: "", weeks: "8", much: inPounds() ? "1 lb" : "500 g" }));
  const [failure, setFailure] = useState<Failure | null>(null);
  const [answered, setAnswered] = useState<Answered | null>(null);
  const read = { crop: findCrop(wanted.crop, crops), first: readDay(wanted.first, today), weeks: readWeeks(wanted.weeks), much: readGrams(wanted.much) };
  const put = (field: keyof Wanted) => (value: string) => setWanted({ ...wanted, [field]: value });
  const words = (typed: Typed<unknown>) => (typed.ok ? (typed.say === undefined ? {} : { say: typed.say }) : failure ? { bad: { wrong: typed.wrong, works: typed.works } } : {});
  const ask = async (): Promise<void> => {
    const faults = Object.entries(read).flatMap(([field, one]): FieldProblem[] => (one.ok ? [] : [{ field: `${FORM}-${field}`, text: one.wrong }]));
    const { crop, first, weeks, much } = read;
    if (!crop.ok || !first.ok || !weeks.ok || !much.ok) return setFailure(failureOf(faults, FORM, "this question"));
    try {
      const advice = await calls.sowingAdvice({ crop: crop.value.crop, from: weekOf(first.value.date), weeks: weeks.value, gramsPerWeek: much.value });
      setFailure(null);
      setAnswered({ advice, cropName: crop.value.name });
    } catch (thrown) {
      setFailure({ ...failureOf([], FORM, "this question"), lead: asProblem(thrown).message });
    }
  };
  return (
    <details class="add-bed">
      <summary class="word">When to sow for the table</summary>
      <form
        aria-label="When to sow for the table"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void ask();
        }}
      >
        {failure && <ProblemNote key={failure.attempt} lead={failure.lead} faults={failure.faults} />}
        <div class="fields">
          <FormField id={`${FORM}-crop`} label="Crop wanted" value={wanted.crop} onInput={put("crop")} list="slip-crops" {...words(read.crop)} />
          <FormField id={`${FORM}-first`} label="Wanted from: a date, or “mid June”" value={wanted.first} onInput={put("first")} {...words(read.first)} />
          <FormField id={`${FORM}-weeks`} label="Weeks in a row" value={wanted.weeks} onInput={put("weeks")} inputMode="numeric" {...words(read.weeks)} />
          <FormField id={`${FORM}-much`} label="Wanted a week, such as 1 kg" value={wanted.much} onInput={put("much")} {...words(read.much)} />
        </div>
        <p class="acts">
          <button type="submit" class="btn">
            Work out the sowings
          </button>
        </p>
      </form>
      {answered && <Sowings {...answered} today={today} />}
    </details>
  );
}

function readWeeks(text: string): Typed<number> {
  const n = numberOf(text.trim(), true);
  return n !== null && Number.isInteger(n) && n >= 1 && n <= MOST_WEEKS ? got(n) : wrong("That is not a number of weeks.", `Write whole weeks, 1 to ${MOST_WEEKS}.`);
}

function Sowings({ advice, cropName, today }: Answered & { readonly today: LocalDate }) {
  const raised = advice.sowings.some(({ plantOutOn }) => plantOutOn !== null);
  return (
    <div class="still">
      <p class="lead" role="status">
        {adviceSentence(advice, cropName, today)}
      </p>
      {advice.sowings.length > 0 && (
        <div class="scroll" tabIndex={0} role="region" aria-label="The sowings">
          <table class="by-turn">
            <thead>
              <tr>
                <th scope="col">Sow</th>
                {raised && <th scope="col">Plant out</th>}
                <th scope="col">How much</th>
                <th scope="col">For</th>
                <th scope="col">First pick</th>
              </tr>
            </thead>
            <tbody>
              {advice.sowings.map((sowing) => (
                <tr key={sowing.fromWeek}>
                  <th scope="row">{shortDay(sowing.sowOn, today)}</th>
                  {raised && <td>{sowing.plantOutOn === null ? "" : shortDay(sowing.plantOutOn, today)}</td>}
                  <td>{sizeWords(sowing)}</td>
                  <td>{servesWords(sowing, today)}</td>
                  <td class="quiet">{firstPickWords(sowing, today)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {advice.notes.map((note) => (
        <p class="note quiet" key={note}>
          {inOurUnits(note)}
        </p>
      ))}
    </div>
  );
}
