/** A place of the larder: its name, its kind, and its litres where somebody has measured them. Made here, and changed or taken away. */
import { useState } from "preact/hooks";
import type { NewPlace, Place } from "#shared/contracts/places.ts";
import { PLACE_KINDS } from "#shared/kernel/way.ts";
import { place as readOne, putPlace } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { capital } from "../../format.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { Conflict } from "../../parts/conflict.tsx";
import { Choice, FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { NO_PLACE, placeFieldsOf, readPlace, type PlaceFields } from "./place-read.ts";

interface PlaceFieldsProps {
  readonly form: string;
  readonly starts?: PlaceFields;
  readonly save: (body: NewPlace) => Promise<void>;
  readonly solid?: boolean;
  readonly saveWords: string;
  readonly leave?: () => void;
  readonly remove?: () => Promise<void>;
}

function PlaceFieldset({ form, starts = NO_PLACE, save, solid = false, saveWords, leave, remove }: PlaceFieldsProps) {
  const [fields, setFields] = useState(starts);
  const { failure, refuse, attempt, bad } = useAttempts((path) => `${form}-${path === "litres" ? "litres" : "name"}`);
  const send = async (): Promise<void> => {
    const read = readPlace(fields, form);
    if (!read.ok) return refuse(read.faults, "the place");
    if ((await attempt(() => save(read.body))) && starts === NO_PLACE) setFields({ ...NO_PLACE, kind: fields.kind });
  };
  return (
    <form
      class="larder-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      {failure && <ProblemNote key={failure.n} lead={failure.lead} faults={failure.faults} />}
      <Choice name={`${form}-kind`} legend="What kind of place" chosen={fields.kind} onChoose={(kind) => setFields({ ...fields, kind })} options={PLACE_KINDS.map((value) => ({ value, words: capital(value) }))} />
      <div class="larder-row">
        <FormField id={`${form}-name`} label="Name of the place" value={fields.name} onInput={(name) => setFields({ ...fields, name })} bad={bad(`${form}-name`)} say="Such as Freezer, drawer 2" />
        <FormField id={`${form}-litres`} label="Litres it holds (optional)" value={fields.litres} onInput={(litres) => setFields({ ...fields, litres })} bad={bad(`${form}-litres`)} inputMode="decimal" />
      </div>
      <p class="acts">
        <button type="submit" class={`btn${solid ? " main" : ""}`}>
          {saveWords}
        </button>
        {leave && (
          <button type="button" class="btn word" onClick={leave}>
            Leave it as it was
          </button>
        )}
        {remove && (
          <button type="button" class="btn word" onClick={() => void attempt(remove)}>
            Take the place away
          </button>
        )}
      </p>
    </form>
  );
}

/** The first place of a larder, or one more. */
export function NewPlaceForm({ first, again }: { readonly first: boolean; readonly again: () => Promise<void> }) {
  const [said, setSaid] = useState("");
  const save = async (body: NewPlace): Promise<void> => {
    await putPlace(newId(), body);
    setSaid(`${body.name} is there.`);
    await again();
  };
  const form = (
    <>
      <PlaceFieldset form="place" save={save} saveWords="Save the place" solid={first} />
      <p class="say" role="status">
        {said}
      </p>
    </>
  );
  if (first)
    return (
      <section class="sec" aria-labelledby="first-place-h">
        <h2 id="first-place-h">The first place</h2>
        <p class="under">Name a fridge, a drawer of the freezer, a shelf. What is put there is listed by its age, and what to eat first stands at the top.</p>
        {form}
      </section>
    );
  return (
    <details class="sec no-print">
      <summary class="word">Another place</summary>
      {form}
    </details>
  );
}

interface PlaceEditProps {
  /** As just read by itself, so that a change by somebody else is seen and not written over. */
  readonly place: Place;
  readonly done: (words: string) => Promise<void>;
  readonly leave: () => void;
  readonly takeAway: (place: Place) => Promise<void>;
}

export function PlaceEdit({ place, done, leave, takeAway }: PlaceEditProps) {
  const [theirs, setTheirs] = useState<{ readonly mine: NewPlace; readonly now: Place } | null>(null);
  const save = async (mine: NewPlace): Promise<void> => {
    try {
      await putPlace(place.id, mine);
    } catch (thrown) {
      if (!asProblem(thrown).stale) throw thrown;
      return setTheirs({ mine, now: await readOne(place.id) });
    }
    await done(`${mine.name}: changed.`);
  };
  if (theirs) {
    const rows = [
      { name: "Name", mine: theirs.mine.name, theirs: theirs.now.name },
      { name: "Kind", mine: theirs.mine.kind, theirs: theirs.now.kind },
      { name: "Litres", mine: String(theirs.mine.litres ?? ""), theirs: String(theirs.now.litres ?? "") },
    ];
    return <Conflict what={place.name} rows={rows} keepMine={() => void save(theirs.mine)} keepTheirs={() => void done(`${theirs.now.name}: left as it was saved.`)} />;
  }
  return <PlaceFieldset form={`place-${place.id}`} starts={placeFieldsOf(place)} save={save} saveWords="Save the change" leave={leave} remove={() => takeAway(place)} />;
}
