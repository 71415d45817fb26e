/** Over a draft: what to look at before it is stored, and what was pasted but found no place. */
import type { RecipeDraft } from "#shared/contracts/recipe-reading.ts";
import { count } from "../../format.ts";
import type { DraftNote } from "./draft-notes.ts";

interface DraftNotesProps {
  readonly doubts: readonly DraftNote[];
  readonly notUnderstood: RecipeDraft["notUnderstood"];
}

export function DraftNotes({ doubts, notUnderstood }: DraftNotesProps) {
  return (
    <>
      {doubts.length > 0 && (
        <section class="sec" aria-labelledby="doubts-h">
          <h2 id="doubts-h">To look at</h2>
          <ul class="rows doubts">
            {doubts.map(({ field, text }) => (
              <li key={`${field} ${text}`}>
                <a href={`#${field}`} onClick={toField(field)}>
                  {text}
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
      {notUnderstood.length > 0 && (
        <details class="sec" open>
          <summary class="word">Found no place: {count(notUnderstood.length, "line", "lines")}</summary>
          <ul class="rows">
            {notUnderstood.map(({ text, why }, i) => (
              <li key={i}>
                <span>{text}</span> <span class="quiet">{why}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

const toField = (id: string) => (event: Event) => {
  event.preventDefault();
  const control = document.getElementById(id);
  const closed = control?.closest("details:not([open])");
  if (closed instanceof HTMLDetailsElement) closed.open = true;
  control?.focus();
  control?.scrollIntoView({ block: "center" });
};
