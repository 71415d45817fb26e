/** A week's needs in three lists: from the shop, from the garden, from the larder. Lines can be ticked; the ticks stay on this device. */
import type { Shopping } from "#shared/contracts/shopping.ts";
import { useTicks } from "./ticks.ts";
import { written } from "./written.ts";

const PARTS = [
  { part: "shop", title: "From the shop", none: "Nothing has to be bought." },
  { part: "garden", title: "From the garden", none: "Nothing is needed from the garden." },
  { part: "larder", title: "From the larder", none: "Nothing is needed from the larder." },
] as const;

export function ShoppingParts({ list }: { readonly list: Shopping }) {
  const ticks = useTicks(list.week);
  return (
    <div class="three-up">
      {PARTS.map(({ part, title, none }) => (
        <section key={part} aria-labelledby={`${part}-h`}>
          <h3 class="head" id={`${part}-h`}>
            {title}
          </h3>
          {list[part].length === 0 ? (
            <p class="under">{none}</p>
          ) : (
            <ul class="tick-list">
              {list[part].map(({ text }) => {
                const line = `${part} ${text}`;
                return (
                  <li key={line}>
                    <label class="tick">
                      <input type="checkbox" checked={ticks.has(line)} onChange={() => ticks.toggle(line)} />
                      <span>{written(text)}</span>
                    </label>
                  </li>
                );
              })}
            </ul>
          )}
        </section>
      ))}
    </div>
  );
}
