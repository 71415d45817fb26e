/** Labels to print: name, date, portions, place, best until, reheating. One for each lot at each place where some of it stands. */
import type { Larder } from "#shared/contracts/larder.ts";
import { count, day } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { written } from "../../parts/written.ts";
import { amountOf } from "./lot-words.ts";

/** `asked`: the id of a place or of a lot; nothing means all. */
export function Labels({ held, asked }: { readonly held: Larder; readonly asked: string | null }) {
  const slips = held.lots.flatMap((lot) => lot.stands.filter((stand) => (stand.portions ?? stand.grams ?? 1) > 0 && (asked === null || lot.id === asked || stand.placeId === asked)).map((stand) => ({ lot, stand })));
  const full = (date: string): string => `${day(date, date)} ${date.slice(0, 4)}`;
  return (
    <>
      <Answer>{slips.length === 0 ? "Nothing stands there to be labelled." : `${count(slips.length, "label", "labels")} to print and cut.`}</Answer>
      <p class="acts no-print">
        {slips.length > 0 && (
          <button type="button" class="btn main" onClick={() => print()}>
            Print the labels
          </button>
        )}
        <a class="btn word" href="/larder">
          Back to the larder
        </a>
      </p>
      <ul class="labels">
        {slips.map(({ lot, stand }) => (
          <li key={`${lot.id}${stand.placeId}`} class="label-slip">
            <b class="what">{lot.title}</b>
            <span>Made {full(lot.madeOn)}</span>
            <span>{amountOf(stand, lot.countedIn)}</span>
            <span>{stand.placeName}</span>
            {lot.bestUntil !== null && <span>Best until {full(lot.bestUntil)}</span>}
            {lot.safeUntil !== undefined && <span>Not safe after {full(lot.safeUntil)}</span>}
            {lot.reheat && <span class="say">{written(lot.reheat)}</span>}
          </li>
        ))}
      </ul>
    </>
  );
}
