/** The counter, top to bottom: what rings, the clock, what to do now, every pot, what moved, cooling, putting away. */
import { useState } from "preact/hooks";
import type { Household } from "#shared/contracts/household.ts";
import type { Counter } from "#shared/contracts/counter.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { sendState } from "../../api/send-state.ts";
import { clockIn, useServiceTime } from "../../parts/instants.ts";
import { useKeepAwake } from "../../parts/keep-awake.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { useTitle } from "../../parts/title.ts";
import { useBell } from "./bell.ts";
import { Change } from "./change.tsx";
import { CloseBatch } from "./close-batch.tsx";
import { CoolingList } from "./cooling-list.tsx";
import { DishRows } from "./dish-rows.tsx";
import { Moved } from "./moved.tsx";
import { Now } from "./now.tsx";
import { potsOf, rings } from "./pots.ts";
import { Pots } from "./pots.tsx";
import { RingBar } from "./ring-bar.tsx";
import { useActs } from "./use-acts.ts";
import { WipeDown } from "./wipe-down.tsx";
import { deviceWords } from "./words.ts";

interface CounterViewProps {
  readonly counter: Counter;
  readonly aheadMs: number;
  readonly all: readonly Recipe[];
  readonly home: Household;
  /** The dish that is being put away. */
  readonly closing: string | null;
  readonly again: () => Promise<void>;
}

export function CounterView({ counter, aheadMs, all, home, closing, again }: CounterViewProps) {
  const now = useServiceTime(aheadMs);
  const acts = useActs(counter, () => Date.now() + aheadMs, again);
  const [wiping, setWiping] = useState(false);
  useTitle("At the counter");
  const underWay = counter.state === "under way";
  const awake = useKeepAwake(underWay);
  const pots = potsOf(counter);
  const ringing = pots.filter((pot) => rings(pot, now));
  const bell = useBell(ringing.length > 0);
  const dish = counter.dishes.find((one) => one.dish === closing);
  if (dish) return <CloseBatch counter={counter} dish={dish} recipe={all.find(({ id }) => id === dish.dish)} again={again} />;
  return (
    <>
      <RingBar ringing={ringing} acts={acts} />
      <div class="counter">
        <header class="c-head">
          <p>
            <b class="serif">{clockIn(counter.zone, now)}</b>
          </p>
          <p>{counter.plan && counter.state !== "finished" ? `done by ${clockIn(counter.zone, counter.plan.endsAt)}` : ""}</p>
        </header>
        <div class="c-main">
          {acts.attempts.failure && <ProblemNote key={acts.attempts.failure.n} lead={acts.attempts.failure.lead} />}
          <Now counter={counter} now={now} acts={acts} onBegin={bell.arm} />
          <Moved counter={counter} acts={acts} />
        </div>
        <div class="c-side">
          <Pots counter={counter} pots={pots} now={now} acts={acts} />
          <p class="c-foot">
            {underWay && (
              <button type="button" class="btn" onClick={() => setWiping(true)}>
                Wipe down
              </button>
            )}
            <a class="btn" href={`/cook-day/${counter.id}`}>
              Whole plan
            </a>
          </p>
          {underWay && (
            <div class="c-say">
              <p role="status">{deviceWords(awake, bell.armed, sendState.value.kind)}</p>
              {!bell.armed && (
                <button type="button" class="btn" onClick={bell.arm}>
                  Let it ring here
                </button>
              )}
            </div>
          )}
          <CoolingList counter={counter} now={now} acts={acts} />
          <DishRows counter={counter} acts={acts} />
          {underWay && <Change counter={counter} all={all} ovens={home.kitchen.ovens.length} acts={acts} />}
        </div>
      </div>
      {wiping && <WipeDown onEnd={() => setWiping(false)} />}
    </>
  );
}
