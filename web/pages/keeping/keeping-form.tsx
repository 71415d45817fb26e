/** Food, way, jar, canner, height above the sea. Jars and canners are asked for only where they matter. */
import { useState } from "preact/hooks";
import { CANNER_NAMES, JAR_NAMES, KEEPING_WAYS, type KeepingFoods } from "#shared/contracts/keeping.ts";
import { capital } from "../../format.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { Choice, FormField } from "../../parts/form-field.tsx";
import { setQuery } from "../../router.ts";
import { CANNER_WORDS, inAddress, JAR_WORDS, type KeepingFields } from "./keeping-form.ts";

interface KeepingFormProps {
  readonly foods: KeepingFoods;
  readonly fields: KeepingFields;
  readonly faults: readonly FieldProblem[];
  /** The household's own. */
  readonly altitudeM: number;
  readonly asked: boolean;
}

export function KeepingForm({ foods, fields, faults, altitudeM, asked }: KeepingFormProps) {
  const [typed, setTyped] = useState(fields);
  const bad = (name: string): { wrong: string } | null => {
    const fault = faults.find(({ field }) => field === name);
    return fault ? { wrong: fault.text } : null;
  };
  const jarred = typed.way === "bottle" || typed.way === "pickle";
  const known = foods.find(({ name, food }) => name.toLowerCase() === typed.food.trim().toLowerCase() || food === typed.food.trim());
  const select = (id: "jar" | "canner", label: string, any: string, options: readonly (readonly [string, string])[]) => (
    <div class="form-field">
      <label for={id}>{label}</label>
      <select class="field" id={id} value={typed[id]} onChange={(event) => setTyped({ ...typed, [id]: event.currentTarget.value })}>
        <option value="">{any}</option>
        {options.map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
  return (
    <form
      class="keeping-form no-print"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setQuery(inAddress(typed));
      }}
    >
      <FormField id="food" label="What is it" value={typed.food} onInput={(food) => setTyped({ ...typed, food })} list="foods" bad={bad("food")} say="A crop, or anything else you would put up" />
      <datalist id="foods">
        {foods.map(({ food, name }) => (
          <option key={food} value={name} />
        ))}
      </datalist>
      <Choice name="way" legend="How" chosen={KEEPING_WAYS.find((way) => way === typed.way) ?? null} onChoose={(way) => setTyped({ ...typed, way })} options={KEEPING_WAYS.map((value) => ({ value, words: capital(value) }))} />
      {bad("way") && <p class="say bad">{bad("way")?.wrong}</p>}
      <div class="keeping-row">
        {jarred && select("jar", "Jar", "any jar", (known && known.jars.length > 0 ? known.jars : JAR_NAMES).map((jar) => [jar, JAR_WORDS[jar]]))}
        {jarred && select("canner", "Canner", "any canner", (known && known.canners.length > 0 ? known.canners : CANNER_NAMES).map((canner) => [canner, CANNER_WORDS[canner]]))}
        <FormField id="altitude" label="Height above the sea" value={typed.altitude} onInput={(altitude) => setTyped({ ...typed, altitude })} bad={bad("altitude")} say={`Left empty: ours, ${altitudeM} m`} />
      </div>
      <p class="acts">
        <button type="submit" class={`btn${asked ? "" : " main"}`}>
          Look it up
        </button>
        {asked && (
          <button type="button" class="btn" onClick={() => print()}>
            Print
          </button>
        )}
      </p>
    </form>
  );
}
