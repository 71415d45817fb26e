/** A dish put away: portions made, eaten, given, lost, and where the rest stands. Nothing hot goes into the cold. */
import { useState } from "preact/hooks";
import type { Counter, CounterDish } from "#shared/contracts/counter.ts";
import type { Place } from "#shared/contracts/places.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { places } from "../../api/calls.ts";
import { putBatch } from "../../api/counter-calls.ts";
import { useLoad } from "../../api/load.ts";
import { newId } from "../../api/new-id.ts";
import { lower, measured } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { useAttempts } from "../../parts/attempt.ts";
import { FormField } from "../../parts/form-field.tsx";
import { LoadFailed, ProblemNote } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import { written } from "../../parts/written.ts";
import { goTo } from "../../router.ts";
import { closeField, closeFields, readClose, type CloseFields } from "./close-form.ts";
import { PlaceRows } from "./place-rows.tsx";

interface CloseBatchProps {
  readonly counter: Counter;
  readonly dish: CounterDish;
  readonly recipe: Recipe | undefined;
  readonly again: () => Promise<void>;
}

export function CloseBatch(props: CloseBatchProps) {
  const { load, again } = useLoad("places", (signal) => places(signal));
  if (load.state === "waiting") return <Waiting name="Put away" doing="Fetching the places of the larder." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <CloseForm {...props} rooms={load.value} />;
}

function CloseForm({ counter, dish, recipe, again, rooms }: CloseBatchProps & { readonly rooms: readonly Place[] }) {
  const [fields, setFields] = useState<CloseFields>(() => closeFields(dish, rooms, newId));
  const [batchId] = useState(newId);
  const { failure, refuse, attempt, bad } = useAttempts(closeField);
  const back = `/counter/${counter.id}`;
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    const read = readClose(fields, dish.dish);
    if (!read.ok) return refuse(read.faults, "this dish");
    const went = await attempt(async () => void (await putBatch(counter.id, batchId, read.batch)));
    if (!went) return;
    await again();
    goTo(back);
  };
  const field = (name: "portions" | "each" | "whole" | "loss" | "eaten" | "given", label: string, say?: string) => (
    <FormField id={`close-${name}`} label={label} value={fields[name]} onInput={(value) => setFields({ ...fields, [name]: value })} say={say} bad={bad(`close-${name}`)} inputMode={name === "each" || name === "whole" || name === "loss" ? "text" : "numeric"} />
  );
  const goesCold = fields.lots.some(({ placeId, portions }) => portions.trim() !== "" && ["fridge", "freezer"].includes(rooms.find(({ id }) => id === placeId)?.kind ?? ""));
  return (
    <form class="c-close" noValidate onSubmit={(event) => void save(event)}>
      <Answer>What came of the {lower(dish.title)}?</Answer>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} faults={failure.faults} />}
      {goesCold && !dish.cooling.mayGoCold && <p class="notice frost">{written(dish.cooling.text)} Until then it cannot be put into fridge or freezer here.</p>}
      <div class="close-row">
        {field("portions", "Portions made", recipe ? `The recipe makes ${recipe.makes.amount} ${recipe.makes.unit} a batch` : undefined)}
        {field("each", "One portion weighs (optional)", "Such as 400 g")}
        {field("eaten", "Eaten now, portions")}
        {field("given", "Given away, portions")}
        {field("whole", "The whole weighs (optional)", "On the scales, before it is parted")}
        {field("loss", "Lost (optional)", "Left in the pan, spilt, tasted")}
      </div>
      <PlaceRows rows={fields.lots} rooms={rooms} onChange={(lots) => setFields({ ...fields, lots })} bad={bad} />
      <Took dish={dish} fields={fields} onChange={(took) => setFields({ ...fields, took })} bad={bad} />
      <p class="c-acts">
        <button type="submit" class="btn main">
          Put it away
        </button>
        <a class="btn" href={back}>
          Back to the counter
        </a>
      </p>
    </form>
  );
}

interface TookProps {
  readonly dish: CounterDish;
  readonly fields: CloseFields;
  readonly onChange: (took: CloseFields["took"]) => void;
  readonly bad: (field: string) => { readonly wrong: string } | null;
}

/** What the recipe took from the larder, oldest first; the household says what was really taken. */
function Took({ dish: { draft }, fields, onChange, bad }: TookProps) {
  if (draft.took.length === 0 && draft.missing.length === 0) return null;
  return (
    <fieldset class="close-took">
      <legend class="head">Taken from the larder</legend>
      {draft.took.map(({ lotId, title, placeName }, i) => (
        <FormField
          key={lotId}
          id={`close-took-${i}`}
          label={`${title}, ${placeName}`}
          value={fields.took[i]?.grams ?? ""}
          onInput={(grams) => onChange(fields.took.map((row, k) => (k === i ? { ...row, grams } : row)))}
          say="Leave it empty if none of it was taken"
          bad={bad(`close-took-${i}`)}
        />
      ))}
      {draft.missing.map(({ crop, grams }) => (
        <p class="quiet" key={crop}>
          {measured(grams)} of {crop.replaceAll("-", " ")} more went in than the larder knows of.
        </p>
      ))}
    </fieldset>
  );
}
