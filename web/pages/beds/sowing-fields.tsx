/** The fields of a sowing, for the slip and for changing what is stored. */
import { useMemo } from "preact/hooks";
import type { Bed } from "#shared/contracts/beds.ts";
import type { Crop } from "#shared/contracts/crops.ts";
import { area } from "../../format.ts";
import { Choice, FormField } from "../../parts/form-field.tsx";
import type { Typed } from "../../parts/typed.ts";
import { inPounds } from "../../units.ts";
import { fieldId, type SlipReading, type SlipText } from "./slip.ts";

interface SowingFieldsProps {
  /** Start of the ids, so that two forms can stand on one page. */
  readonly form: string;
  readonly text: SlipText;
  readonly read: SlipReading;
  readonly crops: readonly Crop[];
  readonly beds: readonly Bed[];
  readonly onChange: (change: Partial<SlipText>) => void;
  /** After an attempt to save: also what was left empty is complained of. */
  readonly strict: boolean;
}

export function SowingFields({ form, text, read, crops, beds, onChange, strict }: SowingFieldsProps) {
  const put = (field: keyof SlipText) => (value: string) => onChange({ [field]: value });
  const words = (field: keyof SlipText, typed: Typed<unknown>) => saidOf(typed, text[field] ?? "", strict);
  const names = useMemo(
    () => (
      <datalist id={`${form}-crops`}>
        {crops.map(({ crop, name }) => (
          <option key={crop} value={name} />
        ))}
      </datalist>
    ),
    [form, crops],
  );
  const standing = read.method === "established";
  return (
    <>
      <div class="fields">
        <FormField id={fieldId(form, "crop")} label="Crop" value={text.crop} onInput={put("crop")} list={`${form}-crops`} {...words("crop", read.crop)} />
        {names}
        {standing ? (
          <FormField id={fieldId(form, "since")} label="Standing since, a year (optional)" value={text.since} onInput={put("since")} inputMode="numeric" {...words("since", read.since)} />
        ) : (
          <FormField id={fieldId(form, "when")} label={whenLabel(read.method)} value={text.when} onInput={put("when")} {...words("when", read.when)} />
        )}
        <div class="wide-field">
          <FormField id={fieldId(form, "much")} label={`How much: ${inPounds() ? "10 ft, 12 plants or 20 sq ft" : "3 m, 12 plants or 2 m²"}`} value={text.much} onInput={put("much")} {...words("much", read.much)} />
        </div>
      </div>
      <Choice name={fieldId(form, "bedId")} legend="Bed" options={beds.map(bedOption)} chosen={text.bedId} onChoose={(bedId) => onChange({ bedId })} />
      <details class="more-fields" open={strict && !(read.raised.ok && read.varietyDays.ok)}>
        <summary class="word">Add variety or a note</summary>
        <FormField id={fieldId(form, "variety")} label="Variety" value={text.variety} onInput={put("variety")} />
        {!standing && (
          <FormField id={fieldId(form, "varietyDays")} label="Days to maturity on its packet: 57, 60–65 or 80 days from sowing" value={text.varietyDays} onInput={put("varietyDays")} {...words("varietyDays", read.varietyDays)} />
        )}
        {read.method === "transplant" && (
          <FormField id={fieldId(form, "raised")} label="Sown on, if raised at home" value={text.raised} onInput={put("raised")} {...words("raised", read.raised)} />
        )}
        <FormField id={fieldId(form, "note")} label="Note" value={text.note} onInput={put("note")} />
      </details>
    </>
  );
}

function whenLabel(method: SlipReading["method"]): string {
  return `${method === "transplant" ? "Planted out" : "Sown"}: a date, “today” or “mid April”`;
}

function bedOption({ id, name, freeM2 }: Bed): { value: string; words: string } {
  return { value: id, words: freeM2 > 0 ? `${name}, ${area(freeM2)} free` : name };
}

/** What stands below a field: how it was read, or what is wrong; an empty field is left in peace until saving was tried. */
function saidOf(read: Typed<unknown>, typed: string, strict: boolean): { say?: string; bad?: { wrong: string; works: string } } {
  if (read.ok) return read.say === undefined ? {} : { say: read.say };
  return typed.trim() === "" && !strict ? {} : { bad: { wrong: read.wrong, works: read.works } };
}
