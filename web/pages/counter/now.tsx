/** What to do now, as large as it goes: the step in hand, what goes into it, Done and Running late, and what comes next. */
import type { Counter, CounterStep } from "#shared/contracts/counter.ts";
import { Answer } from "../../parts/answer.tsx";
import { clockIn } from "../../parts/instants.ts";
import { UndoLine } from "../../parts/undo-line.tsx";
import { written } from "../../parts/written.ts";
import { Late } from "./late.tsx";
import { firstWords } from "./pots.ts";
import { Ticks } from "./ticks.tsx";
import type { Acts } from "./use-acts.ts";
import { byWords, loadWords, stepWords, whenWords } from "./words.ts";

interface NowProps {
  readonly counter: Counter;
  readonly now: number;
  readonly acts: Acts;
  readonly onBegin: () => void;
}

export function Now({ counter, now, acts, onBegin }: NowProps) {
  const stepOf = (key: string): CounterStep[] => counter.steps.filter((step) => step.key === key);
  const inHand = counter.inHand.flatMap(stepOf);
  const next = counter.next.flatMap(stepOf).filter((step) => !inHand.includes(step));
  const main = inHand.length > 0 ? inHand : next.slice(0, 1);
  const rest = inHand.length > 0 ? next : next.slice(1);
  if (counter.state !== "under way") return <NotUnderWay counter={counter} acts={acts} onBegin={onBegin} />;
  return (
    <section class="c-now" aria-label="Now">
      {main.length === 0 && <AllDone counter={counter} acts={acts} />}
      {main.map((step, i) => (
        <StepBlock key={step.key} counter={counter} step={step} now={now} acts={acts} first={i === 0} onBegin={onBegin} />
      ))}
      {acts.done && <UndoLine done={acts.done.words} undo={acts.done.undo} />}
      {rest.map((step) => (
        <div class="c-next" key={step.key}>
          <p>
            <span class="quiet">Next, {clockIn(counter.zone, step.startsAt)}</span> {written(step.text)}
            {loadWords(counter, step) && <span class="quiet"> {loadWords(counter, step)}</span>}
          </p>
          <button type="button" class="btn" onClick={() => acts.start(step)}>
            Start<span class="vh">: {firstWords(step.text)}</span>
          </button>
        </div>
      ))}
    </section>
  );
}

interface StepBlockProps extends NowProps {
  readonly step: CounterStep;
  readonly first: boolean;
}

function StepBlock({ counter, step, now, acts, first, onBegin }: StepBlockProps) {
  const dish = counter.dishes.find((one) => one.dish === step.dish);
  const begun = step.startedAt !== undefined;
  const by = byWords(counter, step, now);
  const load = loadWords(counter, step);
  return (
    <div class="c-step">
      <p class="c-dish">
        {dish?.title}
        {load && `, ${load}`}
      </p>
      {first ? <Answer>{written(step.text)}</Answer> : <h2 class="answer">{written(step.text)}</h2>}
      <p class="c-how">
        {begun ? "" : `${clockIn(counter.zone, step.startsAt)}. `}
        {stepWords(counter, step)}. {by && <b class="over">{by}</b>}
      </p>
      <p class="c-acts">
        {begun ? (
          <button type="button" class="btn main" onClick={() => acts.finish(step)}>
            Done<span class="vh">: {firstWords(step.text)}</span>
          </button>
        ) : (
          <button
            type="button"
            class="btn main"
            onClick={() => {
              onBegin();
              acts.start(step);
            }}
          >
            Start<span class="vh">: {firstWords(step.text)}</span>
          </button>
        )}
        {first && <Late step={begun ? step : null} acts={acts} />}
      </p>
      {dish && <Ticks counter={counter} dish={dish} acts={acts} />}
    </div>
  );
}

/** Nothing for the hands just now: pots may still go on. */
function AllDone({ counter, acts }: { readonly counter: Counter; readonly acts: Acts }) {
  const going = counter.minding.length > 0;
  return (
    <>
      <Answer>{going ? "Hands are free. The pots go on by themselves." : "Every step is done."}</Answer>
      {!going && (
        <p class="c-acts">
          <button type="button" class="btn main" onClick={() => acts.mark({ kind: "finished" }, "The cook day is finished.")}>
            Finish the day
          </button>
        </p>
      )}
    </>
  );
}

function NotUnderWay({ counter, acts, onBegin }: { readonly counter: Counter; readonly acts: Acts; readonly onBegin: () => void }) {
  if (counter.state === "finished")
    return (
      <section class="c-now" aria-label="Now">
        <Answer>{counter.headline}</Answer>
        {acts.done && <UndoLine done={acts.done.words} undo={acts.done.undo} />}
      </section>
    );
  const agreed = counter.state === "agreed" && !counter.stale;
  return (
    <section class="c-now" aria-label="Now">
      <Answer>{agreed ? `Ready for ${whenWords(counter)}.` : counter.stale ? "The day was changed after its plan was agreed on." : "No plan is agreed on for this day yet."}</Answer>
      <p class="c-how">{agreed ? "Begin whenever you stand at the counter: the plan counts from that moment." : "Look at the whole plan and agree on it; then the day can begin."}</p>
      <p class="c-acts">
        {agreed ? (
          <button
            type="button"
            class="btn main"
            onClick={() => {
              onBegin();
              acts.mark({ kind: "begun" }, "The cook day has begun.");
            }}
          >
            Begin now
          </button>
        ) : (
          <a class="btn main" href={`/cook-day/${counter.id}`}>
            To the plan
          </a>
        )}
      </p>
      {acts.done && <UndoLine done={acts.done.words} undo={acts.done.undo} />}
    </section>
  );
}
