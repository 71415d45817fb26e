/** Writes a supply down or changes it: what it is, how much there is, and its date where it has one. */
import { useState } from "preact/hooks";
import { SUPPLY_KINDS, type NewSupply } from "#shared/contracts/supplies.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { NO_SUPPLY, readSupply, type SupplyFields } from "./supply-form.ts";
import { isCounted, KIND_WORDS } from "./supply-words.ts";

interface SupplyFormProps {
  /** Begins the ids. */
  readonly form: string;
  readonly today: LocalDate;
  readonly starts?: SupplyFields;
  readonly kept?: Pick<NewSupply, "note">;
  readonly save: (body: NewSupply) => Promise<void>;
  readonly saveWords: string;
  readonly solid?: boolean;
  readonly leave?: () => void;
  readonly remove?: () => Promise<void>;
}

export function SupplyForm({ form, today, starts = NO_SUPPLY, kept = {}, save, saveWords, solid = false, leave, remove }: SupplyFormProps) {
  const [fields, setFields] = useState<SupplyFields>(starts);
  const { failure, refuse, attempt, bad } = useAttempts((path) => `${form}-${FIELDS[path] ?? "name"}`);
  const send = async (): Promise<void> => {
    const read = readSupply(fields, today, form, kept);
    if (!read.ok) return refuse(read.faults, "this");
    if (await attempt(() => save(read.body))) setFields(starts === NO_SUPPLY ? { ...NO_SUPPLY, kind: fields.kind } : fields);
  };
  const field = (name: Exclude<keyof SupplyFields, "kind">, label: string, say?: string) => (
    <FormField id={`${form}-${name}`} label={label} value={fields[name]} onInput={(value) => setFields({ ...fields, [name]: value })} bad={bad(`${form}-${name}`)} say={say} />
  );
  return (
    <form
      class="supply-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      {failure && <ProblemNote key={failure.n} lead={failure.lead} faults={failure.faults} />}
      <div class="fields-row">
        <div class="form-field">
          <label for={`${form}-kind`}>Kind</label>
          <select class="field" id={`${form}-kind`} value={fields.kind} onChange={(event) => setFields({ ...fields, kind: SUPPLY_KINDS.find((kind) => kind === event.currentTarget.value) ?? fields.kind })}>
            {SUPPLY_KINDS.map((kind) => (
              <option key={kind} value={kind}>
                {KIND_WORDS[kind]}
              </option>
            ))}
          </select>
        </div>
        {field("name", "Name", "Such as Jars of half a litre")}
        {field("amount", isCounted(fields.kind) ? "How many there are" : "How much there is", isCounted(fields.kind) ? "" : fields.kind === "vinegar" ? "Such as 1.5 l" : "Such as 1.2 kg")}
        {isCounted(fields.kind) && fields.kind !== "lid" && field("holds", "One holds (optional)", "Such as 500 ml")}
        {!isCounted(fields.kind) && field("bestUntil", "Best until (optional)", "Such as 30 June 2028")}
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
            Take it off the list
          </button>
        )}
      </p>
    </form>
  );
}

const FIELDS: Readonly<Record<string, keyof SupplyFields>> = { kind: "kind", name: "name", amount: "amount", unit: "amount", holdsMl: "holds", bestUntil: "bestUntil" };
