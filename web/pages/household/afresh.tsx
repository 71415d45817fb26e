/** Deleting the household: the one thing here that cannot be undone, so it asks, in words. */
import { useState } from "preact/hooks";
import { removeHousehold } from "../../api/calls.ts";
import { asProblem } from "../../api/problem.ts";
import { FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { goTo } from "../../router.ts";

export function Afresh({ name }: { readonly name: string }) {
  const [typed, setTyped] = useState("");
  const [failed, setFailed] = useState<{ readonly n: number; readonly lead: string } | null>(null);
  const fail = (lead: string): void => setFailed({ n: (failed?.n ?? 0) + 1, lead });
  const remove = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (typed.trim() !== name) return fail(`To delete everything, type the household’s name: ${name}`);
    try {
      await removeHousehold();
      // the calendar says how to begin
      goTo("/");
    } catch (thrown) {
      fail(asProblem(thrown).message);
    }
  };
  return (
    <details class="sec">
      <summary class="word">Delete this household and begin afresh</summary>
      <form onSubmit={(event) => void remove(event)} noValidate>
        <p class="under">Beds, sowings, picks, weather, plans, cook days and your own recipes are deleted. This cannot be undone. The recipes that come with the book stay.</p>
        {failed && <ProblemNote key={failed.n} lead={failed.lead} />}
        <FormField id="delete-name" label={`To be sure, type the household’s name: ${name}`} value={typed} onInput={setTyped} />
        <p class="acts">
          <button type="submit" class="btn">
            Delete everything for good
          </button>
        </p>
      </form>
    </details>
  );
}
