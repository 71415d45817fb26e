/** The frame of a cook day: which day, from when until when, with how many hands and what kitchen. */
import { useState } from "preact/hooks";
import { NewCookDay, type CookDay } from "#shared/contracts/cook-days.ts";
import type { Kitchen } from "#shared/contracts/kitchen.ts";
import { FormField } from "../../parts/form-field.tsx";
import { leadFor, type FieldProblem } from "../../parts/field-problem.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { readDay } from "../../parts/typed-day.ts";

export interface DayFrame {
  readonly on: string;
  readonly startsAt: string;
  readonly endsBy?: string | undefined;
  readonly cooks: number;
  readonly kitchen: Kitchen;
}

interface DayFormProps {
  readonly frame: DayFrame;
  readonly today: string;
  readonly dishes: readonly { readonly recipeId: string; readonly batches: number }[];
  readonly kept?: Pick<CookDay, "unavailable" | "title">;
  readonly button: string;
  /** Resolves to null when it was stored, else to what stands in the way. */
  readonly onSave: (body: NewCookDay) => Promise<{ lead: string; faults: readonly FieldProblem[] } | null>;
}

const WHOLE = ["cooks", "burners", "pots", "sinks", "ovens", "trays", "preheatMin", "changeMin"] as const;
type Whole = (typeof WHOLE)[number];
const LABELS: Readonly<Record<string, string>> = { on: "Day", startsAt: "Begin at", endsBy: "Done by", cooks: "Cooks", burners: "Burners", pots: "Large pots", sinks: "Sinks", ovens: "Ovens", trays: "Trays in an oven", preheatMin: "Minutes to heat up", changeMin: "Minutes to change heat" };

export function DayForm({ frame, today, dishes, kept, button, onSave }: DayFormProps) {
  const [fields, setFields] = useState<Readonly<Record<string, string>>>(() => fieldsOf(frame));
  const [attempt, setAttempt] = useState<{ readonly n: number; readonly lead: string; readonly faults: readonly FieldProblem[] } | null>(null);
  const field = (name: string, say?: string) => {
    const fault = attempt?.faults.find((one) => one.field === name);
    return <FormField id={name} label={LABELS[name]} value={fields[name] ?? ""} onInput={(value) => setFields({ ...fields, [name]: value })} say={say} bad={fault ? { wrong: fault.text } : null} />;
  };
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    const read = readFrame(fields, today, dishes, kept);
    const n = (attempt?.n ?? 0) + 1;
    if (!read.ok) return setAttempt({ n, lead: leadFor(read.faults.length, "the cook day"), faults: read.faults });
    const failed = await onSave(read.body);
    setAttempt(failed && { n, ...failed });
  };
  return (
    <form onSubmit={(event) => void save(event)} noValidate>
      {attempt && <ProblemNote key={attempt.n} lead={attempt.lead} faults={attempt.faults} />}
      <div class="form-row">
        {field("on", "A date, such as 1 August")}
        {field("startsAt", "Such as 9:00")}
        {field("endsBy", "Leave empty for no end")}
        {field("cooks")}
      </div>
      <details>
        <summary class="word">The kitchen on that day</summary>
        <div class="form-row">{WHOLE.slice(1).map((name) => field(name))}</div>
      </details>
      <p class="acts">
        <button type="submit" class="btn main">
          {button}
        </button>
      </p>
    </form>
  );
}

function fieldsOf(frame: DayFrame): Record<string, string> {
  const oven = frame.kitchen.ovens[0] ?? { trays: 2, preheatMin: 15, changeMin: 10 };
  return {
    on: frame.on,
    startsAt: frame.startsAt,
    endsBy: frame.endsBy ?? "",
    cooks: String(frame.cooks),
    burners: String(frame.kitchen.burners),
    pots: String(frame.kitchen.pots ?? 1),
    sinks: String(frame.kitchen.sinks ?? 1),
    ovens: String(frame.kitchen.ovens.length),
    trays: String(oven.trays),
    preheatMin: String(oven.preheatMin),
    changeMin: String(oven.changeMin),
  };
}

type ReadFrame = { readonly ok: true; readonly body: NewCookDay } | { readonly ok: false; readonly faults: FieldProblem[] };

export function readFrame(fields: Readonly<Record<string, string>>, today: string, dishes: DayFormProps["dishes"], kept?: DayFormProps["kept"]): ReadFrame {
  const faults: FieldProblem[] = [];
  const whole = (name: Whole): number => {
    const text = fields[name]?.trim() ?? "";
    if (!/^\d{1,4}$/.test(text)) faults.push({ field: name, text: `${LABELS[name]}: a whole number is needed` });
    return Number(text);
  };
  const on = readDay(fields["on"] ?? "", today);
  if (!on.ok) faults.push({ field: "on", text: `${LABELS["on"]}: ${on.wrong} ${on.works}` });
  const time = (name: "startsAt" | "endsBy"): string => {
    const found = /^\s*(\d{1,2})[:.h](\d{2})\s*$/.exec(fields[name] ?? "");
    return found ? `${(found[1] as string).padStart(2, "0")}:${found[2]}` : (fields[name] ?? "").trim();
  };
  const oven = { trays: whole("trays"), preheatMin: whole("preheatMin"), changeMin: whole("changeMin") };
  const endsBy = time("endsBy");
  const body = {
    on: on.ok ? on.value.date : "",
    startsAt: time("startsAt"),
    ...(endsBy === "" ? {} : { endsBy }),
    cooks: whole("cooks"),
    kitchen: { ovens: Array.from({ length: Math.min(5, whole("ovens")) }, () => oven), burners: whole("burners"), pots: whole("pots"), sinks: whole("sinks") },
    dishes: dishes.map(({ recipeId, batches }) => ({ recipeId, batches })),
    ...(kept && kept.unavailable.length > 0 ? { unavailable: kept.unavailable } : {}),
    ...(kept?.title === undefined ? {} : { title: kept.title }),
  };
  if (faults.length > 0) return { ok: false, faults };
  const parsed = NewCookDay.safeParse(body);
  if (parsed.success) return { ok: true, body: parsed.data };
  for (const { path, message } of parsed.error.issues) {
    const name = path.map(String).findLast((part) => part in LABELS) ?? "on";
    if (!faults.some((fault) => fault.field === name)) faults.push({ field: name, text: `${LABELS[name]}: ${message}` });
  }
  return { ok: false, faults };
}
