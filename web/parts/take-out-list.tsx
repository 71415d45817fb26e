/** What comes out of the freezer tonight for tomorrow. One press says that it is in the fridge, another takes that back. */
import { useState } from "preact/hooks";
import type { Place } from "#shared/contracts/places.ts";
import type { TakeOut } from "#shared/contracts/shopping.ts";
import { putMovement, removeMovement } from "../api/calls.ts";
import { newId } from "../api/new-id.ts";
import { useAttempts } from "./attempt.ts";
import { ProblemNote } from "./problem-note.tsx";
import { UndoLine } from "./undo-line.tsx";
import { written } from "./written.ts";

interface TakeOutListProps {
  readonly tonight: TakeOut;
  readonly places: readonly Place[];
  readonly again: () => Promise<void>;
}

interface Done {
  readonly words: string;
  readonly lotId: string;
  readonly movementId: string;
}

export function TakeOutList({ tonight, places, again }: TakeOutListProps) {
  const [done, setDone] = useState<Done | null>(null);
  const { failure, attempt } = useAttempts();
  const fridge = places.find(({ kind }) => kind === "fridge");
  if (tonight.lots.length === 0 && done === null) return null;
  const move = ({ lotId, title, placeId, grams, portions }: TakeOut["lots"][number], toPlaceId: string): Promise<boolean> =>
    attempt(async () => {
      const movementId = newId();
      const amount = portions === null ? { grams: grams ?? 0 } : { portions };
      await putMovement(lotId, movementId, { kind: "move", on: tonight.on, at: new Date().toISOString(), placeId, toPlaceId, ...amount });
      await again();
      setDone({ words: `${title}: in the fridge.`, lotId, movementId });
    });
  const undo = (it: Done): Promise<boolean> =>
    attempt(async () => {
      await removeMovement(it.lotId, it.movementId);
      await again();
      setDone(null);
    });
  return (
    <section class="sec" aria-labelledby="out-h">
      <h2 id="out-h">Out of the freezer tonight</h2>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} />}
      {done && <UndoLine done={done.words} undo={() => void undo(done)} of={done.words} />}
      <ul class="rows deed-rows">
        {tonight.lots.map((lot) => (
          <li key={`${lot.lotId}${lot.for}`}>
            <p>{written(lot.text)}</p>
            {fridge && (
              <button type="button" class="btn no-print" onClick={() => void move(lot, fridge.id)}>
                It is in the fridge<span class="vh">: {lot.title}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
