/** Lays a bed out, or changes one: name, length, width, cover. */
import { useState } from "preact/hooks";
import type { Bed, NewBed } from "#shared/contracts/beds.ts";
import { COVERS, type Cover } from "#shared/kernel/way.ts";
import { lower, typedMetres } from "../../format.ts";
import { Choice, FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { readLength } from "../../parts/typed-amount.ts";
import { inPounds } from "../../units.ts";
import { failureOf, type Failure } from "./failure.ts";

interface BedFormProps {
  /** Start of the ids. */
  readonly form: string;
  readonly bed?: Bed;
  /** Saves; a failure is shown with what was typed still there. */
  readonly onSave: (bed: NewBed) => Promise<void>;
  readonly saveWords: string;
  readonly solid?: boolean;
  readonly onLeave?: () => void;
  readonly onRemove?: () => void;
}

const COVER_WORDS: Record<Cover, string> = {
  open: "Open",
  fleece: "Fleece",
  "cold-frame": "Cold frame",
  polytunnel: "Polytunnel",
  greenhouse: "Greenhouse",
  indoors: "Indoors",
};
export const coverWords = (cover: Cover): string => COVER_WORDS[cover];

export function BedForm({ form, bed, onSave, saveWords, solid = false, onLeave, onRemove }: BedFormProps) {
  const [name, setName] = useState(bed?.name ?? "");
  const [lengthM, setLength] = useState(bed ? typedMetres(bed.lengthM) : "");
  const [widthM, setWidth] = useState(bed ? typedMetres(bed.widthM) : inPounds() ? "4 ft" : "1.2 m");
  const [cover, setCover] = useState<Cover>(bed?.cover ?? "open");
  const [failure, setFailure] = useState<Failure | null>(null);
  const [busy, setBusy] = useState(false);
  const unit = inPounds() ? "feet" : "metres";
  const read = { name: name.trim(), lengthM: readLength(lengthM), widthM: readLength(widthM) };
  const save = async (): Promise<void> => {
    const faults = [
      ...(read.name === "" ? [{ field: `${form}-name`, text: "The bed has no name" }] : []),
      ...(["lengthM", "widthM"] as const).flatMap((field) => {
        const typed = read[field];
        return typed.ok ? [] : [{ field: `${form}-${field}`, text: `${field === "lengthM" ? "Length" : "Width"}: ${lower(typed.wrong)}` }];
      }),
    ];
    if (faults.length > 0 || !read.lengthM.ok || !read.widthM.ok) return setFailure(failureOf(faults, form, "this bed"));
    setBusy(true);
    try {
      await onSave({ name: read.name, lengthM: read.lengthM.value, widthM: read.widthM.value, cover });
      setFailure(null);
      if (!bed) {
        setName("");
        setLength("");
      }
    } catch (thrown) {
      setFailure(failureOf(thrown, form, "this bed"));
    } finally {
      setBusy(false);
    }
  };
  const submit = (event: Event): void => {
    event.preventDefault();
    if (!busy) void save();
  };
  const bad = (field: "lengthM" | "widthM", typed: string) => {
    const answer = read[field];
    return answer.ok || (typed.trim() === "" && failure === null) ? {} : { bad: { wrong: answer.wrong, works: answer.works } };
  };
  return (
    <form class="bed-form" onSubmit={submit} noValidate aria-label={bed ? `Change ${bed.name}` : "Lay a bed out"}>
      {failure && <ProblemNote key={failure.attempt} lead={failure.lead} faults={failure.faults} />}
      <div class="fields">
        <div class="wide-field">
          <FormField id={`${form}-name`} label="Name of the bed" value={name} onInput={setName} {...(failure && read.name === "" ? { bad: { wrong: "The bed has no name.", works: "Write what you call it." } } : {})} />
        </div>
        <FormField id={`${form}-lengthM`} label={`Length in ${unit}`} value={lengthM} onInput={setLength} inputMode="decimal" {...bad("lengthM", lengthM)} />
        <FormField id={`${form}-widthM`} label={`Width in ${unit}`} value={widthM} onInput={setWidth} inputMode="decimal" {...bad("widthM", widthM)} />
      </div>
      <Choice name={`${form}-cover`} legend="Cover" options={COVERS.map((value) => ({ value, words: COVER_WORDS[value] }))} chosen={cover} onChoose={setCover} />
      <p class="acts">
        <button type="submit" class={`btn${solid ? " main" : ""}`}>
          {saveWords}
        </button>
        {onLeave && (
          <button type="button" class="btn word" onClick={onLeave}>
            Leave it as it was
          </button>
        )}
        {onRemove && (
          <button type="button" class="btn word" onClick={onRemove}>
            Remove the bed
          </button>
        )}
      </p>
    </form>
  );
}
