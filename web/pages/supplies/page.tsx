/** /supplies: what has to be bought, picked and taken out for a week, and what there is of jars, lids, bags and dry goods. ?week= another week. */
import { addWeeks, isIsoWeek, weekOf } from "#shared/kernel/iso-week.ts";
import { larder, shopping, supplies, takeOut } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { inOurUnits, weekTitle } from "../../format.ts";
import type { PageProps } from "../../pages.ts";
import { Answer } from "../../parts/answer.tsx";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { ShoppingParts } from "../../parts/shopping-parts.tsx";
import { TakeOutList } from "../../parts/take-out-list.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import { setQuery } from "../../router.ts";
import { ShortPlate } from "./short-plate.tsx";
import { SupplyRows } from "./supply-rows.tsx";
import { pastWords } from "./supply-words.ts";
import "./supplies.css";

export default function SuppliesPage({ query }: PageProps) {
  const week = query.get("week");
  const asked = week !== null && isIsoWeek(week) ? week : undefined;
  const { load, again } = useLoad(`supplies ${asked ?? ""}`, async (signal) => {
    const [list, held, tonight, stored] = await Promise.all([shopping(asked === undefined ? {} : { week: asked }, signal), supplies(signal), takeOut(signal), larder(signal)]);
    return { list, held, tonight, places: stored.places };
  });
  if (load.state === "waiting") return <Waiting name="Supplies and shopping" doing="Taking what the larder and the garden have off what the week needs." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  const { list, held, tonight, places } = load.value;
  const past = pastWords(held);
  const toWeek = (weeks: number): void => setQuery({ week: addWeeks(list.week, weeks) });
  return (
    <>
      <Answer>{inOurUnits(list.headline)}</Answer>
      {past !== "" && <p class="under">{past}</p>}
      <ShortPlate lines={list.supplies} />
      {list.supplies.length > 0 && <p class="say">A bar is what there is; the upright stroke is what the week takes.</p>}
      <TakeOutList tonight={tonight} places={places} again={again} />
      <section class="sec" aria-labelledby="list-h">
        <div class="headline-row">
          <h2 id="list-h">{weekTitle(list.week)}</h2>
          <p class="acts no-print">
            {list.week > weekOf(tonight.on) && (
              <button type="button" class="btn word" onClick={() => toWeek(-1)}>
                Week earlier
              </button>
            )}
            <button type="button" class="btn word" onClick={() => toWeek(1)}>
              Week later
            </button>
            <button type="button" class="btn" onClick={() => print()}>
              Print the list
            </button>
          </p>
        </div>
        <ShoppingParts list={list} />
      </section>
      <SupplyRows held={held} today={tonight.on} again={again} />
    </>
  );
}
