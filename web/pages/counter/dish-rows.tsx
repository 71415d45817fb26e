/** The dishes of the day: what state each is in, the way to put it away, and of what is put away the labels. */
import type { Counter, CounterDish } from "#shared/contracts/counter.ts";
import { count, listed, measured } from "../../format.ts";
import type { Acts } from "./use-acts.ts";

export function DishRows({ counter, acts }: { readonly counter: Counter; readonly acts: Acts }) {
  if (counter.state !== "under way" && counter.state !== "finished") return null;
  return (
    <section class="c-dishes" aria-labelledby="dishes-h">
      <h2 id="dishes-h" class="head">
        Dishes
      </h2>
      <ul class="rows">
        {counter.dishes.map((dish) => (
          <li key={dish.dish}>
            <p>
              <b class="serif">{dish.title}</b> <span class="quiet">{dish.batch ? batchWords(dish.batch) : dish.state}</span>
            </p>
            {dish.batch ? (
              <p class="c-acts">
                {dish.batch.lots.map((lot) => (
                  <a class="btn" key={lot.id} href={`/larder?view=labels&lot=${lot.id}`}>
                    Labels<span class="vh"> of {lot.title}</span>, {lot.placeName}
                  </a>
                ))}
                <button type="button" class="btn" onClick={() => acts.unbatch(dish.batch?.id ?? "")}>
                  Undo<span class="vh"> putting away: {dish.title}</span>
                </button>
              </p>
            ) : (
              (dish.state === "cooling" || dish.state === "ready to put away" || (counter.state === "finished" && dish.state === "under way")) && (
                <p class="c-acts">
                  <a class="btn" href={`/counter/${counter.id}?close=${dish.dish}`}>
                    Put away<span class="vh">: {dish.title}</span>
                  </a>
                </p>
              )
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** “8 portions: 2 eaten, 6 in Freezer, drawer 2; 50 g lost”. */
export function batchWords({ portions, eatenPortions, givenPortions, lossGrams, lots }: NonNullable<CounterDish["batch"]>): string {
  const went = [
    eatenPortions > 0 ? `${eatenPortions} eaten` : "",
    givenPortions > 0 ? `${givenPortions} given away` : "",
    ...lots.map((lot) => `${lot.portions ?? 0} in ${lot.placeName}`),
  ].filter(Boolean);
  return `${count(portions, "portion", "portions")}${went.length > 0 ? `: ${listed(went)}` : ""}${lossGrams > 0 ? `; ${measured(lossGrams)} lost` : ""}`;
}
