/** What helps to settle a day: when the rises have to begin, what can be done the evening before, what each dish adds. Worked out when it is asked for. */
import { useState } from "preact/hooks";
import type { DayAdvice } from "#shared/contracts/choosing.ts";
import { dayAdvice } from "../../api/counter-calls.ts";
import { length } from "../../format.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { written } from "../../parts/written.ts";
import { DishCosts } from "./dish-costs.tsx";

export function Advice({ dayId }: { readonly dayId: string }) {
  const [advice, setAdvice] = useState<DayAdvice | null>(null);
  const [asking, setAsking] = useState(false);
  const { failure, attempt } = useAttempts();
  const ask = async (): Promise<void> => {
    setAsking(true);
    await attempt(async () => setAdvice(await dayAdvice(dayId)));
    setAsking(false);
  };
  return (
    <section class="sec no-print" aria-labelledby="advice-h">
      <h2 id="advice-h">To make the day shorter</h2>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} />}
      {advice === null && (
        <p class="acts">
          <button type="button" class="btn" onClick={() => void ask()}>
            Rises, the evening before, what each adds
          </button>
        </p>
      )}
      <p class="vh" role="status">
        {asking ? "Trying the day with each of them." : advice ? "Worked out; it stands below." : ""}
      </p>
      {advice && <Worked advice={advice} />}
    </section>
  );
}

function Worked({ advice: { rests, nightBefore, dishes } }: { readonly advice: DayAdvice }) {
  return (
    <>
      {rests.length > 0 && (
        <ul class="rows">
          {rests.map(({ dish, step, text }) => (
            <li key={`${dish} ${step}`}>{written(text)}</li>
          ))}
        </ul>
      )}
      <h3 class="lead">The evening before</h3>
      {nightBefore.length === 0 && <p>Nothing: no recipe of this day lets its work stand overnight.</p>}
      <ul class="rows">
        {nightBefore.map(({ dish, text, texts, whole, handsOnMin }) => (
          <li key={dish}>
            <p>{written(text)}</p>
            <p class="quiet">
              {whole ? "" : `${texts.map(written).join(" · ")}: `}
              {length(handsOnMin)} of hands
            </p>
          </li>
        ))}
      </ul>
      <h3 class="lead">What each dish adds</h3>
      <DishCosts dishes={dishes} />
    </>
  );
}
