/** What has gone in, with the time: an interrupted cook looks here first. */
import { useEffect, useState } from "preact/hooks";
import type { Counter, CounterDish } from "#shared/contracts/counter.ts";
import { clockIn } from "../../parts/instants.ts";
import { written } from "../../parts/written.ts";
import type { Acts } from "./use-acts.ts";

/** So many stand open; a longer list opens with a press, or Done would slip out of sight on a phone. */
const OPEN_AT_MOST = 6;

export function Ticks({ counter, dish, acts }: { readonly counter: Counter; readonly dish: CounterDish; readonly acts: Acts }) {
  const { ingredients } = dish;
  // what was pressed shows at once; what the service then says stands
  const [asked, setAsked] = useState<ReadonlyMap<number, boolean>>(new Map());
  useEffect(() => setAsked(new Map()), [ingredients]);
  const press = (line: number, text: string, mark: string | undefined): void => {
    setAsked(new Map([...asked, [line, mark === undefined]]));
    if (mark === undefined) acts.mark({ kind: "ticked", dish: dish.dish, line }, `In: ${text}.`);
    else acts.unmark(mark);
  };
  if (ingredients.length === 0) return null;
  const inAlready = ingredients.filter(({ tickedAt }) => tickedAt !== undefined).length;
  return (
    <details class="c-ticks" open={ingredients.length <= OPEN_AT_MOST}>
      <summary>
        What goes in: {inAlready} of {ingredients.length} in
      </summary>
      <ul class="ticks">
        {ingredients.map(({ line, text, tickedAt, mark }) => (
          <li key={line}>
            <label class="c-tick">
              <input type="checkbox" checked={asked.get(line) ?? tickedAt !== undefined} onChange={() => press(line, text, mark)} />
              <span class="tk">
                <span class="nm">{written(text)}</span>
                {tickedAt !== undefined && <small> in, {clockIn(counter.zone, tickedAt)}</small>}
              </span>
            </label>
          </li>
        ))}
      </ul>
    </details>
  );
}
