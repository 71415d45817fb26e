/** One small table for each place, in walking order: what stands there, and one press to take some. */
import type { Larder } from "#shared/contracts/larder.ts";
import { amountOf, isUrgent, lotName } from "./lot-words.ts";
import { MoveRow, type Move } from "./move-row.tsx";
import { roomWords } from "./room.ts";

export function PlaceList({ held, onMove }: { readonly held: Larder; readonly onMove: Move }) {
  if (held.places.length === 0) return null;
  return (
    <section class="sec" aria-labelledby="places-h">
      <h2 id="places-h">By place</h2>
      <div class="place-cols">
        {held.places.map((place) => {
          const there = held.lots.flatMap((lot) => lot.stands.filter(({ placeId }) => placeId === place.id).map((stand) => ({ lot, stand })));
          return (
            <div class="place" key={place.id}>
              <h3>{place.name}</h3>
              <p class="say">
                {roomWords(place)}
              </p>
              <ul class="rows">
                {there.map(({ lot, stand }) => (
                  <li key={lot.id} class="stand">
                    <p>
                      <span>{lotName(lot, held.today)}</span> <span class={isUrgent(lot, held.today) ? "over" : "quiet"}>{amountOf(stand, lot.countedIn)}</span>
                    </p>
                    <MoveRow lot={lot} name={`${lotName(lot, held.today)}, ${place.name}`} deeds={["take", "put"]} placeId={place.id} onMove={onMove} quiet />
                  </li>
                ))}
              </ul>
              {there.length === 0 && <p class="under">Nothing stands here.</p>}
              {there.length > 0 && (
                <p class="acts no-print">
                  <a class="btn word" href={`/larder?count=${place.id}`}>
                    Recount<span class="vh"> {place.name}</span>
                  </a>
                  <a class="btn word" href={`/larder?view=labels&lot=${place.id}`}>
                    Labels<span class="vh"> for {place.name}</span>
                  </a>
                </p>
              )}
            </div>
          );
        })}
      </div>
    </section>
  );
}
