/** Hot food on its way to the cold: two stages, each with its limit and the time it was measured. Until both are met nothing goes into fridge or freezer. */
import type { Counter, CounterDish } from "#shared/contracts/counter.ts";
import { degrees } from "../../format.ts";
import { clockIn } from "../../parts/instants.ts";
import { written } from "../../parts/written.ts";
import type { Acts } from "./use-acts.ts";

interface CoolingListProps {
  readonly counter: Counter;
  readonly now: number;
  readonly acts: Acts;
}

export function CoolingList({ counter, now, acts }: CoolingListProps) {
  const dishes = counter.dishes.filter(({ cooling, batch }) => cooling.needed && cooling.hotUntil !== undefined && batch === undefined && cooling.state !== "not hot yet");
  if (dishes.length === 0) return null;
  const sources = new Map(dishes.flatMap(({ cooling }) => cooling.sources.map(({ id, text }) => [id, text] as const)));
  return (
    <section class="c-cool" aria-labelledby="cool-h">
      <h2 id="cool-h" class="head">
        Cooling, before it goes cold
      </h2>
      {dishes.map((dish) => (
        <CoolingDish key={dish.dish} dish={dish} zone={counter.zone} now={now} acts={acts} />
      ))}
      <details>
        <summary>Where these limits come from</summary>
        {[...sources].map(([id, text]) => (
          <p class="quiet" key={id}>
            {text}
          </p>
        ))}
        <p class="quiet">They are limits, not aims: colder sooner is better. Local food-safety authority comes first.</p>
      </details>
    </section>
  );
}

function CoolingDish({ dish: { dish, title, cooling }, zone, now, acts }: { readonly dish: CounterDish; readonly zone: string; readonly now: number; readonly acts: Acts }) {
  const open = cooling.stages.find(({ reachedAt }) => reachedAt === undefined);
  const late = cooling.state === "first stage late" || cooling.state === "second stage late";
  const gone = cooling.state === "thrown away";
  return (
    <div class="c-cooling">
      <h3>{title}</h3>
      <p class={late ? "notice" : undefined}>{written(cooling.text)}</p>
      {!gone && (
        <ul class="ticks">
          {cooling.stages.map(({ stage, toC, by, reachedAt, mark }) => (
            <li key={stage}>
              <label class="c-tick">
                <input
                  type="checkbox"
                  checked={reachedAt !== undefined}
                  disabled={reachedAt === undefined && open?.stage !== stage}
                  onChange={() => {
                    if (mark !== undefined) acts.unmark(mark);
                    else if (stage === 1 || stage === 2) acts.mark({ kind: "cooled", dish, stage }, `${title}: ${degrees(toC)} or colder.`);
                  }}
                />
                <span class="tk">
                  <span class="nm">Measured: {degrees(toC)} or colder</span>
                  <small>
                    {reachedAt !== undefined ? ` at ${clockIn(zone, reachedAt)}` : by === undefined ? "" : Date.parse(by) < now ? <b class="over"> late, limit was {clockIn(zone, by)}</b> : ` by ${clockIn(zone, by)}`}
                  </small>
                </span>
              </label>
            </li>
          ))}
        </ul>
      )}
      {late && (
        <p class="c-acts">
          {cooling.state === "first stage late" && (
            <button type="button" class="btn" onClick={() => acts.mark({ kind: "reheated", dish }, `${title}: brought to heat again.`)}>
              Brought to heat again<span class="vh">: {title}</span>
            </button>
          )}
          <button type="button" class="btn" onClick={() => acts.mark({ kind: "discarded", dish }, `${title}: thrown away.`)}>
            Thrown away<span class="vh">: {title}</span>
          </button>
        </p>
      )}
    </div>
  );
}
