/** Writes down what is wanted in store by a day, or what somebody asks for. */
import { useState } from "preact/hooks";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { putStockTarget, putWish } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { day } from "../../format.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { Choice, FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { readDay } from "../../parts/typed-day.ts";
import { NOTHING_WANTED, readWanted, type WantedFields } from "./wanted-read.ts";

interface WantedFormProps {
  readonly recipes: readonly { readonly id: string; readonly title: string }[];
  readonly today: LocalDate;
  readonly done: (words: string) => Promise<void>;
}

const FIELDS: Readonly<Record<string, keyof WantedFields>> = { recipeId: "dish", portions: "portions", by: "by", from: "who" };

export function WantedForm({ recipes, today, done }: WantedFormProps) {
  const [fields, setFields] = useState<WantedFields>(NOTHING_WANTED);
  const { failure, refuse, attempt, bad } = useAttempts((path) => `wanted-${FIELDS[path] ?? "dish"}`);
  const send = async (): Promise<void> => {
    const read = readWanted(fields, recipes, today);
    if (!read.ok) return refuse(read.faults, "this");
    const sent = await attempt(async () => {
      if (read.kind === "target") await putStockTarget(newId(), read.body);
      else await putWish(newId(), read.body);
      await done(read.kind === "target" ? `${read.title}: wanted by ${day(read.body.by, today)}.` : `${read.title}: asked for.`);
    });
    if (sent) setFields({ ...NOTHING_WANTED, kind: fields.kind });
  };
  const field = (name: Exclude<keyof WantedFields, "kind">, label: string, say?: string, list?: string) => (
    <FormField id={`wanted-${name}`} label={label} value={fields[name]} onInput={(value) => setFields({ ...fields, [name]: value })} bad={bad(`wanted-${name}`)} say={say} {...(list === undefined ? {} : { list })} />
  );
  const until = fields.by.trim() === "" ? null : readDay(fields.by, today);
  return (
    <form
      class="no-print wanted-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <h3 class="head">Ask for something</h3>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} faults={failure.faults} />}
      <Choice
        name="wanted-kind"
        legend="What is it"
        chosen={fields.kind}
        onChoose={(kind) => setFields({ ...fields, kind })}
        options={[
          { value: "target", words: "Stock to have by a day" },
          { value: "wish", words: "Somebody’s wish" },
        ]}
      />
      <div class="fields-row">
        {field("dish", "Which dish", undefined, "wanted-dishes")}
        {field("portions", "How many portions")}
        {field("by", fields.kind === "target" ? "By when" : "By when (optional)", until?.ok ? until.say : "Such as 1 November")}
        {fields.kind === "wish" && field("who", "Who asks (optional)", "Such as the children")}
      </div>
      <datalist id="wanted-dishes">
        {recipes.map(({ id, title }) => (
          <option key={id} value={title} />
        ))}
      </datalist>
      <p class="acts">
        <button type="submit" class="btn">
          {fields.kind === "target" ? "Want this in store" : "Write the wish down"}
        </button>
      </p>
    </form>
  );
}
