/** So much of a dish, out of its oldest lots first, wherever they stand: first it says from where, then one press takes it all. */
import { useState } from "preact/hooks";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Larder, OldestFirst as Answer } from "#shared/contracts/larder.ts";
import { oldestFirst, putMovement, removeMovement } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { FormField } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";
import { written } from "../../parts/written.ts";
import { kinOf } from "./oldest.ts";
import { readAmount } from "./read-amount.ts";

interface OldestFirstProps {
  readonly held: Larder;
  readonly all: readonly { readonly id: string; readonly title: string }[];
  readonly book: readonly Crop[];
  readonly again: () => Promise<void>;
}

interface Taken {
  readonly lotId: string;
  readonly movementId: string;
}

export function OldestFirst({ held, all, book, again }: OldestFirstProps) {
  const kin = kinOf(held.lots, all, book);
  const [key, setKey] = useState("");
  const [much, setMuch] = useState("");
  const [found, setFound] = useState<Answer | null>(null);
  const [taken, setTaken] = useState<readonly Taken[] | null>(null);
  const { failure, refuse, attempt, bad } = useAttempts(() => "oldest-much");
  const chosen = kin.find((one) => one.key === key) ?? kin[0];
  if (!chosen) return null;
  const look = async (): Promise<void> => {
    const amount = readAmount(much, chosen.countedIn);
    if (!amount.ok) return refuse([{ field: "oldest-much", text: `How much: ${amount.wrong.toLowerCase()} ${amount.works}` }], "this");
    await attempt(async () => {
      setTaken(null);
      setFound(await oldestFirst({ ...chosen.of, ...amount.value }));
    });
  };
  const take = ({ takes }: Answer): Promise<boolean> =>
    attempt(async () => {
      const done: Taken[] = [];
      try {
        for (const { lotId, placeId, grams, portions } of takes) {
          const movementId = newId();
          await putMovement(lotId, movementId, { kind: "take", on: held.today, at: new Date().toISOString(), placeId, ...(portions === null ? { grams: grams ?? 0 } : { portions }) });
          done.push({ lotId, movementId });
        }
      } finally {
        // where one of several was refused, what went out before it can still be taken back
        setFound(null);
        setMuch("");
        await again();
        setTaken(done);
      }
    });
  const undo = (all: readonly Taken[]): Promise<boolean> =>
    attempt(async () => {
      for (const { lotId, movementId } of all) await removeMovement(lotId, movementId);
      setTaken(null);
      await again();
    });
  return (
    <details class="sec no-print oldest">
      <summary class="word">Take out, the oldest first</summary>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} faults={failure.faults} />}
      {taken && taken.length > 0 && <UndoLine done="Taken out." undo={() => void undo(taken)} of="what was taken out" />}
      <form
        class="larder-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void look();
        }}
      >
        <div class="larder-row">
          <div class="form-field">
            <label for="oldest-what">What</label>
            <select
              class="field"
              id="oldest-what"
              value={chosen.key}
              onChange={(event) => {
                setKey(event.currentTarget.value);
                setFound(null);
              }}
            >
              {kin.map(({ key: value, title }) => (
                <option key={value} value={value}>
                  {title}
                </option>
              ))}
            </select>
          </div>
          <FormField id="oldest-much" label={`How much, ${chosen.countedIn}`} value={much} onInput={setMuch} bad={bad("oldest-much")} />
        </div>
        <p class="acts">
          <button type="submit" class="btn">
            Say from where
          </button>
        </p>
      </form>
      <p role="status">{found ? written(found.text) : ""}</p>
      {found && found.takes.length > 0 && (
        <p class="acts">
          <button type="button" class="btn main" onClick={() => void take(found)}>
            Take these out
          </button>
        </p>
      )}
    </details>
  );
}
