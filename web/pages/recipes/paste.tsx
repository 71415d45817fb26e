/** A recipe from elsewhere: pasted, read into a draft, looked over, stored. What was pasted stays on the page, and in this window until it is stored. */
import { useState } from "preact/hooks";
import type { Crop } from "#shared/contracts/crops.ts";
import type { RecipeDraft } from "#shared/contracts/recipe-reading.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { readRecipeText } from "../../api/calls.ts";
import { asProblem } from "../../api/problem.ts";
import { Answer } from "../../parts/answer.tsx";
import { FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { keptText, keepText } from "./kept-text.ts";
import { RecipeEditor } from "./recipe-editor.tsx";
import { bodyToRead } from "./text-to-read.ts";

interface PasteProps {
  readonly book: readonly Crop[];
  readonly all: readonly Recipe[];
}

export function Paste({ book, all }: PasteProps) {
  const [text, setText] = useState(keptText);
  const [draft, setDraft] = useState<{ readonly n: number; readonly read: RecipeDraft } | null>(null);
  const [failed, setFailed] = useState<{ readonly n: number; readonly lead: string } | null>(null);
  const [busy, setBusy] = useState(false);
  const type = (typed: string): void => {
    setText(typed);
    keepText(typed);
  };
  const read = async (): Promise<void> => {
    if (busy) return;
    const fail = (lead: string): void => setFailed((before) => ({ n: (before?.n ?? 0) + 1, lead }));
    if (text.trim() === "") return fail("Paste a recipe first: its name, what goes in, what is done.");
    setBusy(true);
    try {
      const answer = await readRecipeText(bodyToRead(text));
      setDraft((before) => ({ n: (before?.n ?? 0) + 1, read: answer }));
      setFailed(null);
    } catch (thrown) {
      fail(asProblem(thrown).message);
    }
    setBusy(false);
  };
  const form = (
    <form
      class="paste"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void read();
      }}
    >
      <FormField id="pasted" label="The recipe as you found it" value={text} onInput={type} lines={draft ? 8 : 14} say="Text as it stands on a page or in a letter, or a page’s own recipe data. Nothing is stored by reading it." />
      <p class="acts">
        <button type="submit" class={`btn${draft ? "" : " main"}`}>
          {draft ? "Read it again" : "Read it"}
        </button>
        {!draft && (
          <a class="btn word" href="/recipes/new">
            Write it by hand
          </a>
        )}
        <span role="status">{busy ? "Reading." : ""}</span>
      </p>
    </form>
  );
  if (draft === null)
    return (
      <>
        <Answer>Paste a recipe, look over what was read, and it is ours.</Answer>
        {failed && <ProblemNote key={failed.n} lead={failed.lead} />}
        {form}
      </>
    );
  return (
    <>
      <RecipeEditor key={draft.n} stored={null} draft={draft.read} book={book} all={all} again={async () => undefined} onStored={() => keepText("")} />
      {failed && <ProblemNote key={failed.n} lead={failed.lead} />}
      <details class="sec">
        <summary class="word">What was pasted</summary>
        <p class="say">Reading it again takes the place of what stands above.</p>
        {form}
      </details>
    </>
  );
}
