/** The picks of one sowing: log one, see them, take one back. */
import { useState } from "preact/hooks";
import type { Pick } from "#shared/contracts/picks.ts";
import type { Sowing } from "#shared/contracts/sowings.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import * as calls from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { day, measured } from "../../format.ts";
import { FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { readGrams } from "../../parts/typed-amount.ts";
import { readDay } from "../../parts/typed-day.ts";
import { inPounds } from "../../units.ts";
import { failureOf, type Failure } from "./failure.ts";
import { picksSummary } from "./sowing-words.ts";

interface PicksOfProps {
  readonly sowing: Sowing;
  readonly picks: readonly Pick[];
  readonly today: LocalDate;
  readonly again: () => Promise<void>;
}

export function PicksOf({ sowing, picks: unsorted, today, again }: PicksOfProps) {
  const form = `pick-${sowing.id}`;
  const [weight, setWeight] = useState("");
  const [when, setWhen] = useState("today");
  const [failure, setFailure] = useState<Failure | null>(null);
  const [busy, setBusy] = useState(false);
  const [grams, date] = [readGrams(weight), readDay(when, today, "today")];
  const act = async (entry: () => Promise<void>): Promise<void> => {
    setBusy(true);
    try {
      await entry();
      setFailure(null);
      setBusy(false);
      await again();
    } catch (thrown) {
      setFailure(failureOf(thrown, form, "this pick"));
    } finally {
      setBusy(false);
    }
  };
  const save = async (): Promise<void> => {
    const faults = [...(grams.ok ? [] : [{ field: `${form}-grams`, text: grams.wrong }]), ...(date.ok ? [] : [{ field: `${form}-pickedOn`, text: date.wrong }])];
    if (!grams.ok || !date.ok) return setFailure(failureOf(faults, form, "this pick"));
    await act(async () => {
      await calls.putPick(newId(), { sowingId: sowing.id, pickedOn: date.value.date, grams: grams.value });
      setWeight("");
    });
  };
  const picks = [...unsorted].sort((a, b) => b.pickedOn.localeCompare(a.pickedOn));
  return (
    <form
      class="part"
      aria-label={`Picks of ${sowing.crop}`}
      onSubmit={(event) => {
        event.preventDefault();
        if (!busy) void save();
      }}
      noValidate
    >
      <h2 class="head">Picked</h2>
      {failure && <ProblemNote key={failure.attempt} lead={failure.lead} faults={failure.faults} />}
      <div class="fields">
        <FormField
          id={`${form}-grams`}
          label={inPounds() ? "Weight in ounces, or 2 lb 3 oz" : "Weight in grams, or 1.2 kg"}
          value={weight}
          onInput={setWeight}
          inputMode="decimal"
          {...(grams.ok ? { say: measured(grams.value) } : weight.trim() === "" && failure === null ? {} : { bad: { wrong: grams.wrong, works: grams.works } })}
        />
        <FormField id={`${form}-pickedOn`} label="When" value={when} onInput={setWhen} {...(date.ok ? (date.say ? { say: date.say } : {}) : { bad: { wrong: date.wrong, works: date.works } })} />
      </div>
      <p class="acts">
        <button type="submit" class="btn">
          Log this pick
        </button>
      </p>
      <p class="say" role="status">
        {picksSummary(picks)}
      </p>
      <ul class="noted">
        {picks.map((pick) => (
          <li key={pick.id}>
            <span>
              {measured(pick.grams)}, {day(pick.pickedOn, today)}
            </span>
            <button type="button" class="btn word" onClick={() => void act(() => calls.removePick(pick.id))}>
              Undo
              <span class="vh">
                {" "}
                the pick of {measured(pick.grams)}, {day(pick.pickedOn, today)}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </form>
  );
}
