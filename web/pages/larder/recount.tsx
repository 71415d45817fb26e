/** One place counted anew: what the book says beside what is there. Only what was written is stored. */
import { useState } from "preact/hooks";
import type { Larder } from "#shared/contracts/larder.ts";
import type { Place } from "#shared/contracts/places.ts";
import { putMovement } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { count } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { leadFor, type FieldProblem } from "../../parts/field-problem.ts";
import { FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { goTo } from "../../router.ts";
import { amountOf, lotName } from "./lot-words.ts";
import { readAmount } from "./read-amount.ts";

interface RecountProps {
  readonly place: Place;
  readonly held: Larder;
  readonly again: () => Promise<void>;
}

export function Recount({ place, held, again }: RecountProps) {
  const there = held.lots.flatMap((lot) => lot.stands.filter(({ placeId }) => placeId === place.id).map((stand) => ({ lot, stand })));
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [ids] = useState(() => new Map(there.map(({ lot }) => [lot.id, newId()])));
  const [failed, setFailed] = useState<{ readonly n: number; readonly lead: string; readonly faults: readonly FieldProblem[] } | null>(null);
  const fail = (lead: string, faults: readonly FieldProblem[]): void => setFailed((before) => ({ n: (before?.n ?? 0) + 1, lead, faults }));
  const save = async (): Promise<void> => {
    const read = there.flatMap(({ lot }) => ((typed[lot.id] ?? "").trim() === "" ? [] : [{ lot, amount: readAmount(typed[lot.id] ?? "", lot.countedIn ?? "portions", true) }]));
    const faults = read.flatMap(({ lot, amount }) => (amount.ok ? [] : [{ field: `count-${lot.id}`, text: `${lot.title}: ${amount.wrong.toLowerCase()} ${amount.works}` }]));
    if (read.length === 0) return fail("Write what is there beside at least one name; 0 where nothing is left.", []);
    if (faults.length > 0) return fail(leadFor(faults.length, "the count"), faults);
    try {
      for (const { lot, amount } of read)
        if (amount.ok) await putMovement(lot.id, ids.get(lot.id) ?? newId(), { kind: "recount", on: held.today, at: new Date().toISOString(), placeId: place.id, ...amount.value });
      await again();
      goTo("/larder");
    } catch (thrown) {
      fail(asProblem(thrown).message, []);
    }
  };
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <Answer>
        {place.name} should hold {count(there.length, "thing", "things")}. Write what is there.
      </Answer>
      <p class="under">Leave a line empty where you have not looked. What differs is kept as a difference; nothing is written over.</p>
      {failed && <ProblemNote key={failed.n} lead={failed.lead} faults={failed.faults} />}
      <ul class="rows recount">
        {there.map(({ lot, stand }) => (
          <li key={lot.id}>
            <p>
              <b class="what">{lotName(lot, held.today)}</b>
              <span class="quiet">The book says {amountOf(stand, lot.countedIn)}.</span>
            </p>
            <FormField id={`count-${lot.id}`} label={`There is, ${lot.countedIn === "grams" ? "grams" : "portions"}`} value={typed[lot.id] ?? ""} onInput={(value) => setTyped({ ...typed, [lot.id]: value })} inputMode="text" bad={faultAt(failed?.faults ?? [], lot.id)} />
          </li>
        ))}
      </ul>
      <p class="acts">
        <button type="submit" class="btn main">
          Save the count
        </button>
        <a class="btn word" href="/larder">
          Leave without saving
        </a>
      </p>
    </form>
  );
}

function faultAt(faults: readonly FieldProblem[], lotId: string): { wrong: string } | null {
  const fault = faults.find(({ field }) => field === `count-${lotId}`);
  return fault ? { wrong: fault.text } : null;
}
