/** A place of the larder: its name, its kind, and its litres where somebody has measured them. */
import { useState } from "preact/hooks";
import { PLACE_KINDS, type PlaceKind } from "#shared/kernel/way.ts";
import { putPlace } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { capital } from "../../format.ts";
import { leadFor, type FieldProblem } from "../../parts/field-problem.ts";
import { Choice, FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { numberOf } from "../../parts/typed-amount.ts";

export function PlaceForm({ first, again }: { readonly first: boolean; readonly again: () => Promise<void> }) {
  const [name, setName] = useState("");
  const [kind, setKind] = useState<PlaceKind>("freezer");
  const [litres, setLitres] = useState("");
  const [said, setSaid] = useState("");
  const [failed, setFailed] = useState<{ readonly n: number; readonly lead: string; readonly faults: readonly FieldProblem[] } | null>(null);
  const fail = (lead: string, faults: readonly FieldProblem[]): void => setFailed((before) => ({ n: (before?.n ?? 0) + 1, lead, faults }));
  const bad = (field: string) => {
    const fault = failed?.faults.find((one) => one.field === field);
    return fault ? { wrong: fault.text } : null;
  };
  const save = async (): Promise<void> => {
    const holds = litres.trim() === "" ? undefined : numberOf(litres.trim().replace(/\s*(?:l|litres?)$/i, ""), false);
    const faults: FieldProblem[] = [];
    if (name.trim() === "") faults.push({ field: "place-name", text: "Name of the place: write one, such as Freezer, drawer 2" });
    if (holds === null || (holds !== undefined && holds <= 0)) faults.push({ field: "place-litres", text: "Litres: a number above 0, such as 30, or nothing" });
    if (faults.length > 0) return fail(leadFor(faults.length, "the place"), faults);
    try {
      await putPlace(newId(), { name, kind, ...(holds === undefined || holds === null ? {} : { litres: Math.round(holds * 10) / 10 }) });
      setSaid(`${name.trim()} is there.`);
      setName("");
      setLitres("");
      setFailed(null);
      await again();
    } catch (thrown) {
      const problem = asProblem(thrown);
      fail(problem.message, problem.fields.map(({ path, message }) => ({ field: path === "litres" ? "place-litres" : "place-name", text: message })));
    }
  };
  const form = (
    <form
      class="larder-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      {failed && <ProblemNote key={failed.n} lead={failed.lead} faults={failed.faults} />}
      <Choice name="place-kind" legend="What kind of place" chosen={kind} onChoose={setKind} options={PLACE_KINDS.map((value) => ({ value, words: capital(value) }))} />
      <div class="larder-row">
        <FormField id="place-name" label="Name of the place" value={name} onInput={setName} bad={bad("place-name")} say="Such as Freezer, drawer 2" />
        <FormField id="place-litres" label="Litres it holds (optional)" value={litres} onInput={setLitres} bad={bad("place-litres")} inputMode="decimal" />
      </div>
      <p class="acts">
        <button type="submit" class={`btn${first ? " main" : ""}`}>
          Save the place
        </button>
        <span role="status">{said}</span>
      </p>
    </form>
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
