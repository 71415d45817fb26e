/** What each dish costs in time: how much longer the day lasts with it, how long it takes alone, how long the hands are on it. */
import type { Choice } from "#shared/contracts/choosing.ts";
import { length } from "../../format.ts";

export function DishCosts({ dishes }: { readonly dishes: Choice["dishes"] }) {
  if (dishes.length === 0) return null;
  const minutes = (n: number | null): string => (n === null ? "not known" : n === 0 ? "nothing" : length(n));
  return (
    <div class="scroll" tabIndex={0} role="region" aria-label="What each dish adds">
      <table class="costs">
        <thead>
          <tr>
            <th scope="col">Dish</th>
            <th scope="col" class="num">
              Adds
            </th>
            <th scope="col" class="num">
              Alone
            </th>
            <th scope="col" class="num">
              Hands
            </th>
          </tr>
        </thead>
        <tbody>
          {dishes.map(({ recipeId, title, batches, addsMin, aloneMin, handsOnMin }) => (
            <tr key={recipeId}>
              <th scope="row">
                {title}
                {batches > 1 && <span class="quiet"> × {batches}</span>}
              </th>
              <td class="num">{minutes(addsMin)}</td>
              <td class="num">{minutes(aloneMin)}</td>
              <td class="num">{minutes(handsOnMin)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
