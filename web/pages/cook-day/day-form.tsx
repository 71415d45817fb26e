/** The frame of a cook day: which day, from when until when, with how many hands and what kitchen. */
import { useState } from "preact/hooks";
import type { NewCookDay } from "#shared/contracts/cook-days.ts";
import { leadFor, type FieldProblem } from "../../parts/field-problem.ts";
import { FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { readDay } from "../../parts/typed-day.ts";
import { AwayRows } from "./away-rows.tsx";
import { frameFields, LABELS, readFrame, type DayFrame, type FrameFields, type FrameName } from "./day-frame.ts";
import { weekdayOf } from "./day-words.ts";

interface DayFormProps {
  readonly frame: DayFrame;
  readonly today: string;
  readonly dishes: NewCookDay["dishes"];
  readonly button: string;
  /** The one solid button of the page. */
  readonly solid?: boolean;
  /** Resolves to null when it was stored, else to what stands in the way. */
  readonly onSave: (body: NewCookDay) => Promise<Failed | null>;
}

export interface Failed {
  readonly lead: string;
  readonly faults: readonly FieldProblem[];
}

const KITCHEN = ["burners", "pots", "sinks", "ovens", "trays", "preheatMin", "changeMin"] as const;

export function DayForm({ frame, today, dishes, button, solid = false, onSave }: DayFormProps) {
  const [fields, setFields] = useState<FrameFields>(() => frameFields(frame, today));
  const [attempt, setAttempt] = useState<(Failed & { readonly n: number }) | null>(null);
  const [busy, setBusy] = useState(false);
  const badOf = (name: string): { wrong: string } | null => {
    const fault = attempt?.faults.find((one) => one.field === name);
    return fault ? { wrong: fault.text } : null;
  };
  const field = (name: FrameName, say?: string, mode: "text" | "numeric" = "numeric") => (
    <FormField id={name} label={LABELS[name]} value={fields[name]} onInput={(value) => setFields({ ...fields, [name]: value })} say={say} bad={badOf(name)} inputMode={mode} />
  );
  const on = readDay(fields.on, today);
  const send = async (): Promise<void> => {
    const read = readFrame(fields, today, dishes, frame.kitchen);
    const n = (attempt?.n ?? 0) + 1;
    if (!read.ok) return setAttempt({ n, lead: leadFor(read.faults.length, "the cook day"), faults: read.faults });
    const failed = await onSave(read.body);
    setAttempt(failed && { n, ...failed });
  };
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (busy) return;
    setBusy(true);
    await send();
    setBusy(false);
  };
  const kitchenBad = KITCHEN.some((name) => badOf(name));
  return (
    <form class="day-form" onSubmit={(event) => void save(event)} noValidate>
      {attempt && <ProblemNote key={attempt.n} lead={attempt.lead} faults={attempt.faults} />}
      <div class="form-row">
        {field("on", on.ok ? weekdayOf(on.value.date) : "A date, such as 1 August", "text")}
        {field("startsAt", "Such as 9:00", "text")}
        {field("endsBy", "Leave empty for no end", "text")}
        {field("cooks")}
      </div>
      <AwayRows rows={fields.away} onChange={(away) => setFields({ ...fields, away })} badOf={badOf} />
      <details open={kitchenBad || undefined}>
        <summary class="word">The kitchen on that day, and its name</summary>
        <div class="form-row">
          {KITCHEN.map((name) => field(name))}
          {field("title", "Leave empty for none", "text")}
        </div>
      </details>
      <p class="acts">
        <button type="submit" class={`btn${solid ? " main" : ""}`}>
          {button}
        </button>
        <span role="status">{busy ? "Saving, then fitting the steps together." : ""}</span>
      </p>
    </form>
  );
}
