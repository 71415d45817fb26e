/** A labelled control with a line below: the label stays above, hints and errors stand below in words. */
import type { ComponentChildren } from "preact";

interface FormFieldProps {
  readonly id: string;
  readonly label: ComponentChildren;
  readonly value: string;
  readonly onInput: (value: string) => void;
  readonly onBlur?: () => void;
  /** Said below the field: a hint, or how the entry was understood. */
  readonly say?: ComponentChildren;
  /** What is wrong, then what would work; replaces `say`. */
  readonly bad?: { readonly wrong: string; readonly works?: string } | null;
  readonly inputMode?: "text" | "numeric" | "decimal" | "url";
  readonly type?: "text" | "time";
  /** Id of a datalist with suggestions. */
  readonly list?: string;
  readonly big?: boolean;
  readonly lines?: number;
}

export function FormField({ id, label, value, onInput, onBlur, say, bad, inputMode = "text", type = "text", list, big = false, lines }: FormFieldProps) {
  const shared = {
    id,
    class: `field${big ? " big" : ""}`,
    value,
    autocomplete: "off" as const,
    "aria-describedby": `${id}-say`,
    "aria-invalid": bad ? ("true" as const) : undefined,
    onBlur,
  };
  return (
    <div class="form-field">
      <label for={id}>{label}</label>
      {lines === undefined ? (
        <input {...shared} type={type} inputMode={inputMode} list={list} onInput={(event) => onInput(event.currentTarget.value)} />
      ) : (
        <textarea {...shared} rows={lines} onInput={(event) => onInput(event.currentTarget.value)} />
      )}
      <FieldWords id={id} say={say} bad={bad ?? null} />
    </div>
  );
}

/** The line below a control. */
function FieldWords({ id, say, bad }: { readonly id: string; readonly say: ComponentChildren; readonly bad: FormFieldProps["bad"] }) {
  return (
    <p class={`say${bad ? " bad" : ""}`} id={`${id}-say`}>
      {bad ? (
        <>
          <b>{bad.wrong}</b> {bad.works}
        </>
      ) : (
        say
      )}
    </p>
  );
}

interface ChoiceProps<T extends string> {
  /** Name of the radio group and start of its ids. */
  readonly name: string;
  readonly legend: string;
  readonly options: readonly { readonly value: T; readonly words: string }[];
  readonly chosen: T | null;
  readonly onChoose: (value: T) => void;
}

/** One of a few, all in sight. */
export function Choice<T extends string>({ name, legend, options, chosen, onChoose }: ChoiceProps<T>) {
  return (
    <fieldset class="choice">
      <legend class="label">{legend}</legend>
      <div class="opts">
        {options.map(({ value, words }, i) => (
          <label class="opt" key={value}>
            <input type="radio" id={i === 0 ? name : undefined} name={name} value={value} checked={value === chosen} onChange={() => onChoose(value)} />
            <span>{words}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
