/** Something new into the larder: what, how much, where. The words used last stay chosen. */
import { useState } from "preact/hooks";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Larder } from "#shared/contracts/larder.ts";
import { putLot, putMovement, removeLot, removeMovement } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { leadFor, type FieldProblem } from "../../parts/field-problem.ts";
import { FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";
import { doneWords } from "./lot-words.ts";
import { readPutIn, type PutInFields } from "./put-in-form.ts";

interface PutInProps {
  readonly held: Larder;
  readonly all: readonly { readonly id: string; readonly title: string }[];
  readonly book: readonly Crop[];
  readonly again: () => Promise<void>;
}

export function PutIn({ held, all, book, again }: PutInProps) {
  const [fields, setFields] = useState<PutInFields>({ what: "", much: "", each: "", on: "today", placeId: held.places[0]?.id ?? "" });
  const [failed, setFailed] = useState<{ readonly n: number; readonly lead: string; readonly faults: readonly FieldProblem[] } | null>(null);
  const [done, setDone] = useState<{ readonly words: string; readonly lotId: string; readonly movementId: string } | null>(null);
  const [ids, setIds] = useState(() => ({ lot: newId(), movement: newId() }));
  const [busy, setBusy] = useState(false);
  if (held.places.length === 0) return null;
  const fail = (lead: string, faults: readonly FieldProblem[]): void => setFailed((before) => ({ n: (before?.n ?? 0) + 1, lead, faults }));
  const bad = (name: string) => {
    const fault = failed?.faults.find(({ field }) => field === `in-${name}`);
    return fault ? { wrong: fault.text } : null;
  };
  const send = async (): Promise<void> => {
    const read = readPutIn(fields, { crops: book, recipes: all }, held.today);
    if (!read.ok) return fail(leadFor(read.faults.length, "this"), read.faults);
    try {
      await putLot(ids.lot, read.lot);
      await putMovement(ids.lot, ids.movement, { ...read.movement, at: new Date().toISOString() });
      setDone({ words: doneWords("put", amountIn(read.movement), read.lot.title), lotId: ids.lot, movementId: ids.movement });
      setIds({ lot: newId(), movement: newId() });
      setFields({ ...fields, what: "", much: "", each: "" });
      setFailed(null);
      await again();
    } catch (thrown) {
      const problem = asProblem(thrown);
      fail(problem.message, problem.fields.map(({ path, message }) => ({ field: `in-${FIELDS[path] ?? "what"}`, text: message })));
    }
  };
  const undo = async (): Promise<void> => {
    if (!done) return;
    try {
      await removeMovement(done.lotId, done.movementId);
      await removeLot(done.lotId).catch(() => undefined);
      setDone(null);
      await again();
    } catch (thrown) {
      fail(asProblem(thrown).message, []);
    }
  };
  const field = (name: Exclude<keyof PutInFields, "placeId">, label: string, say?: string, list?: string) => (
    <FormField id={`in-${name}`} label={label} value={fields[name]} onInput={(value) => setFields({ ...fields, [name]: value })} bad={bad(name)} say={say} {...(list === undefined ? {} : { list })} />
  );
  return (
    <section class="sec no-print" aria-labelledby="in-h">
      <h2 id="in-h">Put something in</h2>
      {failed && <ProblemNote key={failed.n} lead={failed.lead} faults={failed.faults} />}
      {done && <UndoLine done={done.words} undo={() => void undo()} of={done.words} />}
      <form
        class="larder-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          if (busy) return;
          setBusy(true);
          void send().finally(() => setBusy(false));
        }}
      >
        <div class="larder-row">
          {field("what", "What", "A dish, a crop as picked, or its name", "larder-names")}
          {field("much", "How much", "Portions, or a weight: 6, 450 g")}
          <div class="form-field">
            <label for="in-placeId">Where</label>
            <select class="field" id="in-placeId" value={fields.placeId} onChange={(event) => setFields({ ...fields, placeId: event.currentTarget.value })}>
              {held.places.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </div>
          {field("each", "One portion weighs (optional)", "Such as 300 g")}
          {field("on", "Made or picked on")}
        </div>
        <datalist id="larder-names">
          {[...all.map(({ title }) => title), ...book.map(({ name }) => name)].map((name) => (
            <option key={name} value={name} />
          ))}
        </datalist>
        <p class="acts">
          <button type="submit" class="btn main">
            Put it in
          </button>
        </p>
      </form>
    </section>
  );
}

const FIELDS: Readonly<Record<string, string>> = { title: "what", crop: "what", recipeId: "what", placeId: "placeId", madeOn: "on", portionGrams: "each", grams: "much", portions: "much", on: "on" };
const amountIn = ({ portions, grams }: { readonly portions?: number | undefined; readonly grams?: number | undefined }): { portions: number } | { grams: number } => (portions === undefined ? { grams: grams ?? 0 } : { portions });
