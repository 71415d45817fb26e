/** One small table for each place, in walking order: what stands there, one press to take some, move it, or change the place itself. */
import { useState } from "preact/hooks";
import type { Larder } from "#shared/contracts/larder.ts";
import type { Place } from "#shared/contracts/places.ts";
import { place as readOne, putPlace, removePlace } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { written } from "../../parts/written.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";
import { amountOf, isUrgent, lotName } from "./lot-words.ts";
import { MoveRow, type Move } from "./move-row.tsx";
import { PlaceEdit } from "./place-form.tsx";
import { loadWords, roomWords } from "./room.ts";

interface PlaceListProps {
  readonly held: Larder;
  readonly onMove: Move;
  readonly again: () => Promise<void>;
}

interface Done {
  readonly words: string;
  readonly undo?: () => Promise<void>;
}

export function PlaceList({ held, onMove, again }: PlaceListProps) {
  const [open, setOpen] = useState<Place | null>(null);
  const [done, setDone] = useState<Done | null>(null);
  const { failure, attempt } = useAttempts();
  if (held.places.length === 0) return null;
  const finish = async (next: Done): Promise<void> => {
    setOpen(null);
    await again();
    setDone(next);
  };
  const takeAway = async ({ id, name, kind, litres }: Place): Promise<void> => {
    await removePlace(id);
    await finish({
      words: `${name}: taken away.`,
      undo: async () => {
        await putPlace(newId(), { name, kind, ...(litres === undefined ? {} : { litres }) });
        await finish({ words: `${name}: there again.` });
      },
    });
  };
  return (
    <section class="sec" aria-labelledby="places-h">
      <h2 id="places-h">By place</h2>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} />}
      {done && <UndoLine done={done.words} undo={done.undo && (() => void attempt(done.undo as () => Promise<void>))} of={done.words} />}
      <div class="place-cols">
        {held.places.map((place) => (
          <div class="place" key={place.id}>
            <h3>{place.name}</h3>
            {open?.id === place.id ? (
              <PlaceEdit place={open} done={(words) => finish({ words })} leave={() => setOpen(null)} takeAway={takeAway} />
            ) : (
              <Standing place={place} held={held} onMove={onMove} change={() => void attempt(async () => setOpen(await readOne(place.id)))} />
            )}
          </div>
        ))}
      </div>
    </section>
  );
}

interface StandingProps {
  readonly place: Place;
  readonly held: Larder;
  readonly onMove: Move;
  readonly change: () => void;
}

function Standing({ place, held, onMove, change }: StandingProps) {
  const there = held.lots.flatMap((lot) => lot.stands.filter(({ placeId }) => placeId === place.id).map((stand) => ({ lot, stand })));
  const others = held.places.filter(({ id }) => id !== place.id);
  return (
    <>
      <p class="say">{[roomWords(place), loadWords(place)].filter(Boolean).join(". ")}</p>
      {place.notes.map((note) => (
        <p class="say" key={note}>
          {written(note)}
        </p>
      ))}
      <ul class="rows">
        {there.map(({ lot, stand }) => (
          <li key={lot.id} class="stand">
            <p>
              <span>{lotName(lot, held.today)}</span> <span class={isUrgent(lot, held.today) ? "over" : "quiet"}>{amountOf(stand, lot.countedIn)}</span>
            </p>
            <MoveRow lot={lot} name={`${lotName(lot, held.today)}, ${place.name}`} deeds={others.length > 0 ? ["take", "put", "move"] : ["take", "put"]} placeId={place.id} others={others} onMove={onMove} quiet />
          </li>
        ))}
      </ul>
      {there.length === 0 && <p class="under">Nothing stands here.</p>}
      <p class="acts no-print">
        {there.length > 0 && (
          <>
            <a class="btn word" href={`/larder?count=${place.id}`}>
              Recount<span class="vh"> {place.name}</span>
            </a>
            <a class="btn word" href={`/larder?view=labels&lot=${place.id}`}>
              Labels<span class="vh"> for {place.name}</span>
            </a>
          </>
        )}
        <button type="button" class="btn word" onClick={change}>
          Change<span class="vh"> {place.name}</span>
        </button>
      </p>
    </>
  );
}
