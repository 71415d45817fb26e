/** What was seen of a sowing: it replaces the part of the forecast before it and narrows the rest. */
import { useState } from "preact/hooks";
import type { Sighting } from "#shared/contracts/sightings.ts";
import type { Sowing } from "#shared/contracts/sowings.ts";
import { STAGES, type Stage } from "#shared/kernel/way.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import * as calls from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { day } from "../../format.ts";
import { Choice, FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { readDay } from "../../parts/typed-day.ts";
import { failureOf, type Failure } from "./failure.ts";

export const STAGE_WORDS: Record<Stage, string> = {
  emerged: "Up",
  "planted-out": "Planted out",
  flowering: "In flower",
  "fruit-set": "Fruit set",
  "first-pick": "First pick",
  finished: "Finished",
};

/** What stands for years is not seen coming up. */
const stagesFor = (sowing: Sowing): Stage[] =>
  STAGES.filter((stage) => !(sowing.method === "established" && (stage === "emerged" || stage === "planted-out")) && !(sowing.method === "direct" && stage === "planted-out"));

export function Sightings({ sowing, today, again }: { readonly sowing: Sowing; readonly today: LocalDate; readonly again: () => Promise<void> }) {
  const form = `seen-${sowing.id}`;
  const [stage, setStage] = useState<Stage | null>(null);
  const [when, setWhen] = useState("today");
  const [failure, setFailure] = useState<Failure | null>(null);
  const [busy, setBusy] = useState(false);
  const read = readDay(when, today, "today");
  const save = async (): Promise<void> => {
    const faults = [...(stage === null ? [{ field: `${form}-stage`, text: "What was seen is not chosen" }] : []), ...(read.ok ? [] : [{ field: `${form}-seenOn`, text: read.wrong }])];
    if (stage === null || !read.ok) return setFailure(failureOf(faults, form, "this sighting"));
    await act(async () => {
      await calls.putSighting(sowing.id, newId(), { stage, seenOn: read.value.date });
      setStage(null);
      setWhen("today");
    });
  };
  const act = async (entry: () => Promise<void>): Promise<void> => {
    setBusy(true);
    try {
      await entry();
      setFailure(null);
      setBusy(false);
      await again();
    } catch (thrown) {
      setFailure(failureOf(thrown, form, "this sighting"));
    } finally {
      setBusy(false);
    }
  };
  return (
    <form
      class="part"
      aria-label={`What was seen of ${sowing.crop}`}
      onSubmit={(event) => {
        event.preventDefault();
        if (!busy) void save();
      }}
      noValidate
    >
      <h2 class="head">Seen</h2>
      {failure && <ProblemNote key={failure.attempt} lead={failure.lead} faults={failure.faults} />}
      <SeenList seen={sowing.sightings} today={today} onUndo={(id) => void act(() => calls.removeSighting(sowing.id, id))} />
      <Choice name={`${form}-stage`} legend="What was seen" options={stagesFor(sowing).map((value) => ({ value, words: STAGE_WORDS[value] }))} chosen={stage} onChoose={setStage} />
      <FormField id={`${form}-seenOn`} label="When" value={when} onInput={setWhen} {...(read.ok ? (read.say ? { say: read.say } : {}) : { bad: { wrong: read.wrong, works: read.works } })} />
      <p class="acts">
        <button type="submit" class="btn">
          Write it down
        </button>
      </p>
    </form>
  );
}

function SeenList({ seen, today, onUndo }: { readonly seen: readonly Sighting[]; readonly today: LocalDate; readonly onUndo: (id: string) => void }) {
  if (seen.length === 0) return <p class="say">Nothing is noted yet. What is seen makes the dates more certain.</p>;
  return (
    <ul class="noted">
      {seen.map(({ id, stage, seenOn }) => (
        <li key={id}>
          <span>
            {STAGE_WORDS[stage]}, {day(seenOn, today)}
          </span>
          <button type="button" class="btn word" onClick={() => onUndo(id)}>
            Undo
            <span class="vh">
              {" "}
              the sighting: {STAGE_WORDS[stage]}, {day(seenOn, today)}
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}
