/** What rings: across the whole width above everything, until somebody has heard it. It pushes the page down and takes no focus. */
import type { Pot } from "./pots.ts";
import type { Acts } from "./use-acts.ts";

export function RingBar({ ringing, acts }: { readonly ringing: readonly Pot[]; readonly acts: Acts }) {
  return (
    <div class="rings" role="alert">
      {ringing.map((pot) => (
        <div class="ring" key={pot.id}>
          <p>
            <b>{pot.name}</b>
            {pot.then ? `${pot.then}.` : "The time is over."}
          </p>
          <button type="button" class="btn" onClick={() => pot.timer && acts.hear(pot.timer)}>
            Stop<span class="vh"> the ring: {pot.name}</span>
          </button>
        </div>
      ))}
    </div>
  );
}
