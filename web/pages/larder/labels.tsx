/** Labels to print: name, date, portions, place, best until, reheating. One for each lot of a place, or of the whole larder. */
import type { Larder } from "#shared/contracts/larder.ts";
import { count, day } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { written } from "../../parts/written.ts";
import { amountOf } from "./lot-words.ts";

/** `asked`: the id of a place or of a lot; nothing means all. */
export function Labels({ held, asked }: { readonly held: Larder; readonly asked: string | null }) {
  const lots = held.lots.filter((lot) => (lot.portions ?? lot.grams ?? 1) > 0 && (asked === null || lot.id === asked || lot.stands.some(({ placeId }) => placeId === asked)));
  const full = (date: string): string => `${day(date, date)} ${date.slice(0, 4)}`;
  return (
    <>
      <Answer>{lots.length === 0 ? "Nothing stands there to be labelled." : `${count(lots.length, "label", "labels")} to print and cut.`}</Answer>
      <p class="acts no-print">
        {lots.length > 0 && (
          <button type="button" class="btn main" onClick={() => print()}>
            Print the labels
          </button>
        )}
        <a class="btn word" href="/larder">
          Back to the larder
        </a>
      </p>
      <ul class="labels">
        {lots.map((lot) => (
          <li key={lot.id} class="label-slip">
            <b class="what">{lot.title}</b>
            <span>Made {full(lot.madeOn)}</span>
            <span>{amountOf(lot, lot.countedIn)}</span>
            <span>{lot.placeName}</span>
            {lot.bestUntil !== null && <span>Best until {full(lot.bestUntil)}</span>}
            {lot.safeUntil !== undefined && <span>Not safe after {full(lot.safeUntil)}</span>}
            {lot.reheat && <span class="say">{written(lot.reheat)}</span>}
          </li>
        ))}
      </ul>
    </>
  );
}
