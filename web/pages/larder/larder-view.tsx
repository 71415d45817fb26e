/** The larder: the sentence, room, use first, by place, put in. */
import { useState } from "preact/hooks";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Larder } from "#shared/contracts/larder.ts";
import type { LarderLot } from "#shared/contracts/lots.ts";
import { putMovement, removeMovement } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { Answer } from "../../parts/answer.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";
import { AgePlate } from "./age-plate.tsx";
import { OldestFirst } from "./oldest-first.tsx";
import { doneWords, isUrgent, lotLine, lotName } from "./lot-words.ts";
import { MoveRow, type Move } from "./move-row.tsx";
import { NewPlaceForm } from "./place-form.tsx";
import { PlaceList } from "./place-list.tsx";
import { PutIn } from "./put-in.tsx";
import { RoomPlate } from "./room-plate.tsx";

interface LarderViewProps {
  readonly held: Larder;
  readonly all: readonly { readonly id: string; readonly title: string }[];
  readonly book: readonly Crop[];
  readonly again: () => Promise<void>;
}

interface Done {
  readonly words: string;
  readonly lotId: string;
  readonly movementId: string;
}

export function LarderView({ held, all, book, again }: LarderViewProps) {
  const { failure, attempt } = useAttempts();
  const [done, setDone] = useState<Done | null>(null);
  const move: Move = async (lot, kind, amount, at) => {
    await attempt(async () => {
      const movementId = newId();
      await putMovement(lot.id, movementId, { kind, on: held.today, at: new Date().toISOString(), ...at, ...amount });
      await again();
      setDone({ words: doneWords(kind, amount, lotName(lot, held.today)), lotId: lot.id, movementId });
    });
  };
  const undo = ({ lotId, movementId }: Done): Promise<boolean> =>
    attempt(async () => {
      await removeMovement(lotId, movementId);
      setDone(null);
      await again();
    });
  const first = firstOf(held);
  return (
    <>
      <Answer>{held.headline}</Answer>
      <p class="acts no-print">
        <a class="btn word" href="/larder?view=account">
          Where the grams went
        </a>
        <a class="btn word" href="/keeping">
          Can I keep this?
        </a>
      </p>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} />}
      {done && <UndoLine done={done.words} undo={() => void undo(done)} of={done.words} />}
      <RoomPlate places={held.places} />
      {held.toRecount.map(({ lotId, text }) => (
        <p class="notice" key={lotId}>
          {text}
        </p>
      ))}
      {first.length > 0 && (
        <section class="sec" aria-labelledby="first-h">
          <h2 id="first-h">Use first</h2>
          <AgePlate lots={first} today={held.today} />
          <ul class="rows first">
            {first.map((lot) => (
              <li key={lot.id}>
                <p>
                  <b class="what">{lotName(lot, held.today)}</b>
                  <span class={isUrgent(lot, held.today) ? "over" : "quiet"}>{lotLine(lot, held.today)}</span>
                </p>
                <MoveRow lot={lot} name={lotName(lot, held.today)} deeds={lot.discard ? ["compost"] : ["take", "give", "compost"]} onMove={move} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <OldestFirst held={held} all={all} book={book} again={again} />
      <PlaceList held={held} onMove={move} again={again} />
      <PutIn held={held} all={all} book={book} again={again} />
      <NewPlaceForm first={held.places.length === 0} again={again} />
    </>
  );
}

/** What has to go, then what is to be used first, then what lies forgotten; each lot once. */
function firstOf(held: Larder): LarderLot[] {
  const ids = new Set([...held.discard, ...held.useFirst, ...held.forgotten].map(({ lotId }) => lotId));
  return [...ids].flatMap((id) => held.lots.find((lot) => lot.id === id) ?? []);
}
