/** Every pot with its minutes; pressed, a row opens to what can be done with it. Below them, a timer of one's own. */
import { useState } from "preact/hooks";
import type { Counter } from "#shared/contracts/counter.ts";
import { FormField } from "../../parts/form-field.tsx";
import { clockIn } from "../../parts/instants.ts";
import { leftFigure, overWords, type Pot } from "./pots.ts";
import type { Acts } from "./use-acts.ts";

interface PotsProps {
  readonly counter: Counter;
  readonly pots: readonly Pot[];
  readonly now: number;
  readonly acts: Acts;
}

export function Pots({ counter, pots, now, acts }: PotsProps) {
  const live = counter.state === "under way";
  if (!live && pots.length === 0) return null;
  return (
    <section class="c-pots" aria-labelledby="pots-h">
      <h2 id="pots-h" class="vh">
        Pots and timers
      </h2>
      <ul>
        {pots.map((pot) => (
          <li key={pot.id}>
            <PotRow counter={counter} pot={pot} now={now} acts={acts} />
          </li>
        ))}
      </ul>
      {live && <OwnTimer acts={acts} />}
    </section>
  );
}

function PotRow({ counter, pot, now, acts }: Omit<PotsProps, "pots"> & { readonly pot: Pot }) {
  const { figure, unit } = leftFigure(pot.endsAt, now);
  const over = overWords(pot.endsAt, now);
  const { step, timer } = pot;
  return (
    <details>
      <summary class="c-pot">
        <span>
          <b class="serif">{pot.name}</b>
          {over ? <span class="over">{over}</span> : pot.then && <span class="quiet">then {lowerFirst(pot.then)}</span>}
        </span>
        <span class="c-min">
          <b>{figure}</b> {unit}
          <span class="quiet">{clockIn(counter.zone, pot.endsAt)}</span>
        </span>
      </summary>
      <p class="c-acts">
        {step ? (
          <button type="button" class="btn" onClick={() => acts.finish(step)}>
            Done<span class="vh">: {pot.name}</span>
          </button>
        ) : (
          <button type="button" class="btn" onClick={() => acts.clear(pot)}>
            Take it off<span class="vh"> the list: {pot.name}</span>
          </button>
        )}
        {timer && (
          <button type="button" class="btn" onClick={() => acts.putOff(pot, 5)}>
            5 min more<span class="vh"> from now: {pot.name}</span>
          </button>
        )}
      </p>
    </details>
  );
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

function OwnTimer({ acts }: { readonly acts: Acts }) {
  const [pot, setPot] = useState("");
  const [minutes, setMinutes] = useState("");
  const [wrong, setWrong] = useState<string | null>(null);
  const send = (event: Event): void => {
    event.preventDefault();
    const n = /^\d{1,4}$/.test(minutes.trim()) ? Number(minutes) : 0;
    if (n < 1 || n > 1440) return setWrong("Minutes: a whole number, such as 12");
    setWrong(null);
    acts.setTimer({ label: pot.trim() || "Timer", minutes: n });
    setPot("");
    setMinutes("");
  };
  return (
    <details class="c-own">
      <summary>A timer of your own</summary>
      <form onSubmit={send} noValidate>
        <FormField id="own-pot" label="Which pot" value={pot} onInput={setPot} />
        <FormField id="own-min" label="Minutes" value={minutes} onInput={setMinutes} inputMode="numeric" bad={wrong === null ? null : { wrong }} />
        <button type="submit" class="btn">
          Start the timer
        </button>
      </form>
    </details>
  );
}
