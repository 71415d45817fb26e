/** What still makes sense to sow in one bed, asked for when somebody wants to know. */
import type { BedAdvice } from "#shared/contracts/advice.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { cropNoun } from "#shared/kernel/crop-words.ts";
import { capital, count } from "../../format.ts";
import { bedAdviceSentence, ripensWords, type StillRipens } from "./advice-words.ts";

/** The surest stand in sight. */
const SHOWN = 8;

export function StillSensible({ advice, today }: { readonly advice: BedAdvice; readonly today: LocalDate }) {
  const { sensible, gamble } = advice;
  const more = sensible.length - SHOWN;
  return (
    <div class="still">
      <p role="status">{bedAdviceSentence(advice)}</p>
      <Crops list={sensible.slice(0, SHOWN)} today={today} />
      {more > 0 && (
        <details>
          <summary class="word">{count(more, "more crop", "more crops")} that ripen</summary>
          <Crops list={sensible.slice(SHOWN)} today={today} />
        </details>
      )}
      {gamble.length > 0 && (
        <details>
          <summary class="word">{count(gamble.length, "gamble", "gambles")}: ripe in some seasons only</summary>
          <Crops list={gamble} today={today} />
        </details>
      )}
    </div>
  );
}

function Crops({ list, today }: { readonly list: readonly StillRipens[]; readonly today: LocalDate }) {
  return (
    <ul class="stands">
      {list.map((one) => (
        <li key={one.crop}>
          <b>{capital(cropNoun(one.name).word)}</b>
          <span>{ripensWords(one, today)}</span>
        </li>
      ))}
    </ul>
  );
}
